"""Cutters, drills, taps, threads, and the lines by which a cabinet names them."""
