"""What the words of older files say, as facts: of a bench step, of how a cut is done, of the header."""
