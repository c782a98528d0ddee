"""What stands on the picture from above beside work and holding: points and their numbers, crowds drawn larger, the first cut, the handles."""
