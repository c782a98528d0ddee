"""What a job needs of the workshop's own tools, and what is picked from them."""
