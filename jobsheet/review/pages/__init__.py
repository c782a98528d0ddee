"""What can be explained, as pages to read."""
