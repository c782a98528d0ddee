"""A stock as the lines of a file."""

from __future__ import annotations

from jobsheet.storage.job_file import job_from_text

HEAD = "format: {}\nunits: mm\nmaterial: S235\nmachine: bench-mill-b-1\nstock:\n"


def stock(lines, version=2):
    text = HEAD.format(version) + "".join(f"  {line}\n" for line in lines.split("; "))
    return job_from_text(text, "job").stock
