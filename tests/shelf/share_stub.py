"""A share that is slow, silent or gone, put below everything that reads and writes files: only
what lies under its root is meant.
"""

from __future__ import annotations

import errno
import io
import os
import threading
import time
from pathlib import Path


class Share:
    """As long as it is `gone` every question raises, as long as it is `silent` none is
    answered; else each takes `seconds`.
    """

    def __init__(self, root, monkeypatch):
        self.root = str(root)
        self.seconds = 0.0
        self.gone = False
        self.asked = 0
        self.asked_by_the_window = 0
        self._answers = threading.Event()
        self._answers.set()
        self._window = threading.get_ident()
        for module, name in (
            (os, "stat"),
            (os, "lstat"),
            (os, "open"),
            (os, "mkdir"),
            (os, "replace"),
            (os, "listdir"),
            (io, "open"),
        ):
            monkeypatch.setattr(module, name, self._guarded(getattr(module, name)))
        monkeypatch.setattr("builtins.open", self._guarded(open))
        monkeypatch.setattr(os, "scandir", self._scanning(os.scandir))

    def silence(self):
        """No question is answered from now on."""
        self._answers.clear()

    def answer(self):
        """All are answered again, those that wait first."""
        self._answers.set()

    def _means(self, path):
        try:
            return os.fspath(path).startswith(self.root)
        except TypeError:
            return False

    def question(self):
        self.asked += 1
        self.asked_by_the_window += threading.get_ident() == self._window
        if self.seconds:
            time.sleep(self.seconds)
        self._answers.wait(30)
        if self.gone:
            raise OSError(errno.EHOSTDOWN, os.strerror(errno.EHOSTDOWN))

    def _guarded(self, real):
        def asked(path, *args, **kwargs):
            if self._means(path):
                self.question()
            return real(path, *args, **kwargs)

        return asked

    def _scanning(self, real):
        def asked(path="."):
            if not self._means(path):
                return real(path)
            self.question()
            return Scanned(real(path), self)

        return asked


class Scanned:
    """What a folder has in it, each question of an entry a question to the share."""

    def __init__(self, entries, share):
        self._entries, self._share = entries, share

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self._entries.close()

    def __iter__(self):
        return (One(entry, self._share) for entry in self._entries)

    def close(self):
        self._entries.close()


class One:
    """An entry."""

    def __init__(self, entry, share):
        self.name, self.path = entry.name, entry.path
        self._entry, self._share = entry, share

    def is_dir(self, **how):
        return self._entry.is_dir(**how)

    def is_file(self, **how):
        return self._entry.is_file(**how)

    def stat(self, **how):
        self._share.question()
        return self._entry.stat(**how)


def many(folder: Path, text: str, count: int) -> None:
    """Jobs in folders of a hundred."""
    for number in range(count):
        inside = folder / f"{number // 100:02d}"
        inside.mkdir(exist_ok=True)
        made = text.replace("number: HM-100", f"number: P-{number:04d}", 1)
        (inside / f"p-{number:04d}.yaml").write_text(made, encoding="utf-8")
