"""One kind of operation a file: fields, figures, what it sweeps, how it reads on the sheet."""
