"""Ladders of growing test cuts: what is asked, how they climb, when they are refused."""
