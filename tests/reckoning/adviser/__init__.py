"""The adviser by parts, against worked examples, plain arithmetic and a search of every way."""
