"""The index of a shelf: words and sizes of every job in a folder, in a file of one's own that can be thrown away at any time.

It lies on the local disk, never on the share. What has another size or time than when it was read is read again, and what was
written within two seconds of being looked at is read once more the next time, for clocks of shares are coarse.
"""

from __future__ import annotations

import contextlib
import os
import sqlite3
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from msgspec import Struct

from jobsheet.errors import CannotWrite, NoSuchEntry
from jobsheet.model.what_ran import Runs
from jobsheet.paths import own_folder
from jobsheet.reckoning.paces import timed
from jobsheet.shelf.how_it_went import OLD_SHEET, Went, went_of
from jobsheet.shelf.scanned_job import Scanned, scanned
from jobsheet.storage.check_code import check_code
from jobsheet.storage.disk import digest
from jobsheet.storage.kept.closed_plans import FOLDER as PLANS
from jobsheet.storage.kept.closed_plans import ClosedPlan, closed_plans
from jobsheet.storage.photos.old_sheets import FOLDER as OLD_SHEETS
from jobsheet.storage.photos.old_sheets import is_old_sheet
from jobsheet.storage.records.run_log import SUFFIX, runs_from

#: Raised when what is kept, or how it is found, changes: an index of another version is made anew.
VERSION = 4
#: A file that is larger is no job [bytes].
LARGEST = 4_000_000
#: Written so shortly before it was read that its time may not tell the next change [ns].
_COARSE = 2_000_000_000
#: So many jobs are not all put away at once (estimate): the folder is not connected then.
MANY = 20
_NEWEST = "made desc, planned_on desc, number"
#: In which orders jobs can be asked for: the last made first of itself.
ORDERS = {
    "newest first": _NEWEST,
    "by number": "number collate nocase, path",
    "trouble first": f"case when made = '' then 1 else -trouble end, {_NEWEST}",
}
#: So many files are written at once: the first are found while the rest is read.
_TOGETHER = 200
#: Once that many are found, so many: the larger a heap, the fewer are laid together later.
_MANY_AT_ONCE = 2000
#: And no longer than this before it is kept [s]: on a slow share little is found otherwise.
_AT_MOST = 1.5
#: Job, micrometres, the word before, the kind of step, the line.
_Row = tuple[int, int, str, str, str]
_ENDINGS = (".yaml", ".yml")

_TABLES = """
create table if not exists jobs (
    id integer primary key, path text unique, mtime integer, size integer, ran_mtime integer, ran_size integer, coarse integer,
    content text, number text, name text, revision text, drawing text, machine text, material text, planned_on text,
    plan integer, steps integer, began text, first text, made text, times integer, went text, how text, trouble integer
);
create virtual table if not exists words using fts5(number, name, text, tokenize = 'unicode61', prefix = '1 2 3');
create table if not exists sizes (job integer, micrometres integer, before text, kind text, line text);
create table if not exists times (
    job integer, id text, date text, set_up real, milling real, holes real, hand real, setting_up real, cutting real
);
create table if not exists worked (content text primary key, verdict text, at text, small blob, large blob);
create index if not exists times_by_job on times (job);
create index if not exists by_size on sizes (micrometres, before, kind, job);
create index if not exists by_order on jobs (made desc, planned_on desc, number, trouble);
create index if not exists by_number on jobs (number collate nocase);
create index if not exists by_beginning on jobs (began);
create index if not exists by_content on jobs (content, how);
create index if not exists by_how on jobs (how);
create index if not exists by_verdict on worked (verdict, content);
create index if not exists by_job on sizes (job);
"""
#: Whether the tables can be read: of each its first row alone, for counting the three
#: together takes hours at ten thousand jobs.
_ANY = "select (select rowid from words limit 1), (select job from sizes limit 1), (select how from jobs limit 1), (select at from worked limit 1)"


class Read(Struct, frozen=True):
    """How far a refresh is: files looked at, of how many, and what it did."""

    looked: int
    of: int
    read: int = 0
    gone: int = 0


class Index:
    """One shelf's index, open. Use it in the thread that made it; the files are never touched."""

    def __init__(self, shelf: Path | str, place: Path | None = None, *, look: bool = True) -> None:
        """Open it. Without `look` the folder is not asked for, which may be slow or away: what was read before is found."""
        self.shelf = folder_there(shelf) if look else Path(shelf)
        self._place = place or place_of(self.shelf)
        self.database = self._opened()
        self._orders: dict[str, list[str]] = {}

    def close(self) -> None:
        """Give the file back."""
        self.database.close()

    def _opened(self) -> sqlite3.Connection:
        """The index as it is; made anew where it is damaged or of another version, in memory where nothing can be written."""
        for _ in range(2):
            made: sqlite3.Connection | None = None
            try:
                self._place.parent.mkdir(parents=True, exist_ok=True)
                made = _connected(str(self._place))
            except (sqlite3.Error, OSError):
                if made is not None:
                    made.close()
                for ending in ("", "-wal", "-shm"):
                    with contextlib.suppress(OSError):
                        self._place.with_name(f"{self._place.name}{ending}").unlink()
            else:
                return made
        return _connected(":memory:")

    def in_order(self, named: str = "") -> list[str]:
        """Every job's id in an order of `ORDERS`; without one the last made first, the rest by when it was planned."""
        order = ORDERS.get(named, _NEWEST)
        if order not in self._orders:
            self._orders[order] = self.ids(f"select id as job from jobs order by {order}")  # noqa: S608 - one of two
        return self._orders[order]

    def ids(self, question: str, values: tuple[str | int, ...] = ()) -> list[str]:
        """The `job` of each row of a question of our own, in one piece.

        A row at a time costs ten times as much, and gives the interpreter away each time.
        """
        whole = f"select group_concat(job) from ({question})"  # noqa: S608 - what is asked stands in this package
        together = self.database.execute(whole, values).fetchone()[0]
        return together.split(",") if together else []

    def forget_order(self) -> None:
        """Another index may have read the folder since: ask for the order anew."""
        self._orders = {}

    def twins(self, at: int) -> tuple[str, ...]:
        """Other files of the same folder that are of the very plan of a job, by what they say, however they are called.

        Services that copy files between computers leave such files where two people wrote at once.
        """
        path, began, first = self.database.execute(
            "select path, began, first from jobs where id = ?", (at,)
        ).fetchone()
        if not began:
            return ()
        others = self.database.execute(
            "select path, first from jobs where began = ? and id != ? order by path", (began, at)
        )
        return tuple(
            other for other, its in others if Path(other).parent == Path(path).parent and (its == first or not (its and first))
        )  # fmt: skip

    def other_plans(self, path: str, most: int = 4) -> tuple[str, ...]:
        """Files with other plans of the same part, such as for another machine; second files of the very same plan are none."""
        row = self.database.execute("select id, number from jobs where path = ?", (path,)).fetchone()
        if row is None or not row[1]:
            return ()
        twins = self.twins(row[0])
        cursor = self.database.execute(
            "select path from jobs where number = ? collate nocase and id != ? order by path",
            (row[1], row[0]),
        )
        return tuple(other for (other,) in cursor if other not in twins)[:most]

    # --- reading the folder ---

    def refresh(
        self, told: Callable[[Read], bool] | None = None, alive: Callable[[], bool] | None = None
    ) -> Read:
        """Read what has changed since the last time.

        Parameters
        ----------
        told : callable, optional
            Hears how far it is, and may answer False to stop: what was read so far stays found
        alive : callable, optional
            Hears that the disk answers, also while nothing is read yet, and may answer False to stop

        Raises
        ------
        NoSuchEntry
            If the folder cannot be looked into, or everything that was in it is gone at once, as when a share is not
            connected: what was read before stays found.
        CannotWrite
            If the index cannot be written.
        """
        database = self.database
        known = {
            path: (mtime, size, ran_mtime, ran_size, coarse)
            for path, mtime, size, ran_mtime, ran_size, coarse in database.execute(
                "select path, mtime, size, ran_mtime, ran_size, coarse from jobs"
            )
        }
        unread: list[str] = []
        files = dict(_files(self.shelf, unread, alive))
        if alive is not None and not alive():
            return Read(0, 0)
        if not files and len(known) >= MANY:
            raise NoSuchEntry(
                f"{self.shelf.name or self.shelf} is empty, and {len(known)} jobs were in it: is it connected?"
                " What was read before is still found"
            )
        changed = [
            path
            for path, state in files.items()
            if path not in known or known[path][:4] != state or known[path][4]
        ]
        gone = [path for path in known if path not in files and not path.startswith(tuple(unread))]
        now = time.time_ns()
        if changed or gone:
            self._orders = {}
        try:
            for path in gone:
                self._forget(path)
            database.commit()
            start = 0
            while start < len(changed):
                most, begun = _TOGETHER if start < _MANY_AT_ONCE else _MANY_AT_ONCE, time.monotonic()
                sizes: list[_Row] = []
                for path in changed[start : start + most]:
                    self._take(path, files[path], now, sizes)
                    start += 1
                    if alive is not None and not alive():
                        self._keep(sizes)
                        return Read(start, len(changed), start, len(gone))
                    if time.monotonic() - begun > _AT_MOST:
                        break
                self._keep(sizes)
                done = Read(start, len(changed), start, len(gone))
                if told is not None and not told(done):
                    return done
        except sqlite3.Error as error:
            raise CannotWrite(
                f"The index of {self.shelf.name} cannot be written: {error}. It can be deleted; it is made anew."
            ) from None
        return Read(len(changed), len(changed), len(changed), len(gone))

    def _forget(self, path: str) -> None:
        row = self.database.execute("select id from jobs where path = ?", (path,)).fetchone()
        if row is not None:
            self.database.execute("delete from jobs where id = ?", row)
            self.database.execute("delete from words where rowid = ?", row)
            self.database.execute("delete from sizes where job = ?", row)
            self.database.execute("delete from times where job = ?", row)

    def _keep(self, sizes: list[_Row]) -> None:
        """Write what was taken; sizes in their own order, else each goes to another end of an index that has grown."""
        sizes.sort(key=_by_size)
        self.database.executemany("insert into sizes values (?,?,?,?,?)", sizes)
        self.database.commit()

    def _take(
        self,
        path: str,
        state: tuple[int, int, int, int],
        now: int,
        sizes: list[_Row],
    ) -> None:
        try:
            raw = (self.shelf / path).read_bytes() if state[1] <= LARGEST else b""
        except OSError:
            return  # gone between the look and the reading: the next look tells
        coarse = int(now - max(state[0], state[2]) < _COARSE)
        content = digest(raw)
        was = self.database.execute(
            "select content, ran_mtime, ran_size from jobs where path = ?", (path,)
        ).fetchone()
        if was == (content, *state[2:]):
            self.database.execute(
                "update jobs set mtime = ?, size = ?, coarse = ? where path = ?", (*state[:2], coarse, path)
            )
            return
        job = scanned(raw.decode("utf-8", "replace"))
        self._forget(path)
        runs = self._runs(path, state)
        went = Went(how=OLD_SHEET) if is_old_sheet(path) else went_of(runs)
        row = self.database.execute(
            "insert into jobs (path, mtime, size, ran_mtime, ran_size, coarse, content, number, name, revision, drawing, machine,"
            " material, planned_on, plan, steps, began, first, made, times, went, how, trouble) values (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
            (
                path,
                *state,
                coarse,
                content,
                *_of(job),
                went.made,
                went.times,
                went.words,
                went.how,
                went.trouble,
            ),
        ).lastrowid
        assert row is not None
        # Where nothing of the kind lies beside it nothing is looked for: on a
        # share each question takes its time.
        closed = self._closed(path) if state[2] else ()
        codes = "\n".join((check_code(raw), *(closed_plan.code for closed_plan in closed)))
        text = f"{path}\n{job.text}\n{went.words}\n{codes}"
        self.database.execute(
            "insert into words (rowid, number, name, text) values (?,?,?,?)",
            (row, job.number or Path(path).stem, job.name, text),
        )
        sizes += [
            (row, size_at.micrometres, size_at.before, size_at.kind, size_at.line) for size_at in job.sizes
        ]
        self.database.executemany(
            "insert into times values (?,?,?,?,?,?,?,?,?)",
            [(row, one.id, one.date, one.set_up, one.milling, one.holes, one.hand, one.setting_up, one.cutting) for one in timed(runs)],
        )  # fmt: skip

    def _closed(self, path: str) -> tuple[ClosedPlan, ...]:
        """Plans of the job that were printed or made: the paper in somebody's hand is found by its code."""
        return closed_plans(self.shelf / path)

    def _runs(self, path: str, state: tuple[int, int, int, int]) -> Runs:
        if not state[3]:
            return Runs()
        beside = self.shelf / path
        try:
            return runs_from(beside.with_name(f"{beside.stem}{SUFFIX}").read_bytes())[0]
        except OSError:
            return Runs()


def place_of(shelf: Path) -> Path:
    """Where the index of a shelf lies on the local disk; the folder itself is not looked at."""
    return own_folder() / "cache" / f"shelf-{digest(str(shelf))}.sqlite"


def _connected(place: str) -> sqlite3.Connection:
    database = sqlite3.connect(place, timeout=5.0)
    # What is lost with the current is read again: the files are the truth.
    database.execute("pragma synchronous = off")
    # With less, ever more of what is written is fetched again as the index grows [KiB]; it
    # is only taken as far as it is used.
    database.execute("pragma cache_size = -32768")
    # Who asks is never held up by who reads the folder; the file lies on the local disk,
    # where this is allowed (section 6).
    database.execute("pragma journal_mode = wal")
    if database.execute("pragma user_version").fetchone()[0] not in (0, VERSION):
        database.close()
        raise sqlite3.DatabaseError("another version")
    database.executescript(_TABLES)
    database.execute(f"pragma user_version = {VERSION}")
    database.execute(_ANY)
    return database


def _by_size(row: _Row) -> tuple[int, str, str, int]:
    return row[1], row[2], row[3], row[0]


def _of(job: Scanned) -> tuple[str | int, ...]:
    return (
        job.number, job.name, job.revision, job.drawing, job.machine, job.material, job.planned_on, job.plan, job.steps,
        job.began, job.first,
    )  # fmt: skip


def folder_there(shelf: Path | str) -> Path:
    """The folder by its whole name. Raises NoSuchEntry where it is not there or cannot be looked into."""
    try:
        path = Path(shelf).expanduser().resolve()
        there = path.is_dir()
    except (OSError, ValueError, RuntimeError):
        raise NoSuchEntry("that cannot be the name of a folder: choose another") from None
    if not there:
        raise NoSuchEntry(f"there is no folder {path.name or path} to look for jobs in")
    return path


def _files(
    shelf: Path, unread: list[str], alive: Callable[[], bool] | None
) -> Iterator[tuple[str, tuple[int, int, int, int]]]:
    """Every job's file below the folder by its path from there, with time and size of it and of its record of what happened.

    What cannot be looked at now is put into `unread` by the beginning of its path: it is not gone. Raises NoSuchEntry where the
    folder itself cannot be.
    """
    folders = [shelf]
    while folders:
        here = folders.pop()
        if alive is not None and not alive():
            return
        try:
            jobs, ran, closed, below = _inside(here, shelf, unread, alive)
        except FileNotFoundError:
            if here == shelf:
                raise NoSuchEntry(f"there is no folder {shelf.name or shelf} to look for jobs in") from None
            continue
        except OSError as error:
            if here == shelf:
                raise NoSuchEntry(
                    f"{shelf.name or shelf} does not answer ({error.strerror or error}): what was read before is still found"
                ) from None
            unread.append(f"{os.path.relpath(here, shelf)}{os.sep}")
            continue
        folders += below
        for path, name, mtime, size in jobs:
            stem = name.rpartition(".")[0]
            told, long = ran.get(stem, (0, 0))
            yield os.path.relpath(path, shelf), (mtime, size, max(told, closed.get(stem, 0)), long)


def _inside(
    here: Path, shelf: Path, unread: list[str], alive: Callable[[], bool] | None
) -> tuple[list[tuple[str, str, int, int]], dict[str, tuple[int, int]], dict[str, int], list[Path]]:
    """One folder: its jobs, their records, their closed plans, the folders in it. Raises OSError where it cannot be looked into."""
    jobs: list[tuple[str, str, int, int]] = []
    ran: dict[str, tuple[int, int]] = {}
    closed: dict[str, int] = {}
    below: list[Path] = []
    with os.scandir(here) as entries:
        for entry in entries:
            if entry.name.startswith("."):
                continue
            try:
                if entry.is_dir(follow_symlinks=False):
                    if entry.name.endswith(
                        PLANS
                    ):  # closed plans of a job beside it: they are found by that job
                        closed[entry.name.removesuffix(PLANS)] = entry.stat().st_mtime_ns
                        continue
                    if entry.name != OLD_SHEETS:
                        below.append(Path(entry.path))
                elif entry.name.endswith(SUFFIX):
                    stat = entry.stat()
                    ran[entry.name.removesuffix(SUFFIX)] = (stat.st_mtime_ns, stat.st_size)
                elif entry.name.endswith(_ENDINGS) and entry.is_file():
                    stat = entry.stat()
                    jobs.append((entry.path, entry.name, stat.st_mtime_ns, stat.st_size))
            except FileNotFoundError:
                continue  # put away between the look and the question
            except OSError:
                unread.append(os.path.relpath(entry.path, shelf))
            if alive is not None and not alive():
                break
    return jobs, ran, closed, below
