"""One verb a file, found by walking this folder."""
