"""What stock is made of, by its shape."""
