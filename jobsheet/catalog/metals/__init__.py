"""Metals: shipped ones, a person's own, densities."""
