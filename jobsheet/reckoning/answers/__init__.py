"""What the machine answers about a step or a kind of cut: speeds, mends, deepest pass, largest drill."""
