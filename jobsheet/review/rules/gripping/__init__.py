"""Rules on how the work sits in the jaws of a vice, and on what lies under it."""
