"""A package index in a folder: empty wheels of every pinned package, and of each a newer version besides."""

import hashlib
import importlib.metadata
import zipfile
from pathlib import Path

import pin
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

#: Newer than any version that is ever pinned.
NEWER = "9999.0"


def requirement(row):
    """What a pinned row asks for, without its hashes."""
    return Requirement(row.splitlines()[0].rstrip("\\ "))


def version_of(wanted):
    (specifier,) = wanted.specifier
    return specifier.version


def empty_wheel(folder, name, version, needs):
    """A wheel that holds nothing but what it is called and what it asks for; its file."""
    stem = f"{name.replace('-', '_').replace('.', '_')}-{version}"
    record = f"{stem}.dist-info"
    metadata = f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n"
    metadata += "".join(f"Requires-Dist: {need}\n" for need in needs)
    wheel = "Wheel-Version: 1.0\nGenerator: test\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
    path = folder / f"{stem}-py3-none-any.whl"
    with zipfile.ZipFile(path, "w") as held:
        held.writestr(f"{record}/METADATA", metadata)
        held.writestr(f"{record}/WHEEL", wheel)
        held.writestr(f"{record}/RECORD", "")
    return path


class StubIndex:
    """The folder, the pins rewritten to what lies in it, and what an installation has to end with."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.pins: dict[str, str] = {}

    @property
    def address(self) -> str:
        return self.folder.as_uri()

    def offer(self, pins: str) -> str:
        """Put every package of the pinned set on offer; the same set with the hashes of the empty wheels."""
        rows = []
        for row in pin.rows(pins):
            wanted = requirement(row)
            if wanted.marker and not wanted.marker.evaluate():
                rows.append(row)  # for another system: asked of nobody here
                continue
            name = canonicalize_name(wanted.name)
            version = version_of(wanted)
            # What the real package of that name asks for, as the environment that runs the tests knows it.
            needs = importlib.metadata.requires(name) or []
            place = self.folder / name
            place.mkdir()
            made = [empty_wheel(place, name, each, needs) for each in (version, NEWER)]
            digests = [hashlib.sha256(path.read_bytes()).hexdigest() for path in made]
            links = [
                f'<a href="{path.name}#sha256={digest}">{path.name}</a>'
                for path, digest in zip(made, digests, strict=True)
            ]
            (place / "index.html").write_text(f"<!DOCTYPE html>{''.join(links)}", encoding="utf-8")
            self.pins[name] = version
            first = row.splitlines()[0]
            rows.append(f"{first}\n    --hash=sha256:{digests[0]}\n")
        return "".join(rows)
