"""One shape of stock a file; `SHAPE` at its end binds what it says."""
