"""Pin anew: work out the exact packages for pyproject.toml, with the hashes of all their files.

For maintainers, after a change of the dependencies: `python packaging/pin.py` with `uv` on the path (or
beside that Python). Versions already pinned are kept unless `--upgrade` is given. One answer serves all
systems and every Python from 3.11 on; what only one system needs carries a marker. No address is written,
so that everybody's own package index is asked.

Extras that one package asks of another (`coverage[toml]`) stay in the pins, and what an extra
brings is pinned like anything else. The set-up installs without resolving and would do without
either; but a pin that lacks an extra makes any other pip look for the package again, and there it
finds a newer one, which has no hash here.
"""

import re
import shutil
import subprocess
import sys
import sysconfig
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
TITLE = "# Pinned by packaging/pin.py from pyproject.toml: {}.\n"


def compile_pins(output: Path, *arguments: str) -> None:
    """Let uv resolve pyproject.toml into `output`."""
    uv = shutil.which("uv") or shutil.which("uv", path=sysconfig.get_path("scripts"))
    if not uv:
        sys.exit("uv is needed to pin: python -m pip install uv")
    command = [uv, "pip", "compile", "--quiet", "--universal", "--python-version", "3.11"]
    command += ["--fork-strategy", "fewest", "--generate-hashes", "--no-strip-extras"]
    command += ["--no-header", "--no-annotate"]
    subprocess.run(
        [*command, *arguments, "--output-file", str(output), "pyproject.toml"],
        cwd=HERE.parent,
        check=True,
    )


def rows(text: str) -> list[str]:
    """Cut a pinned set into its packages, each with the lines of its hashes."""
    found: list[str] = []
    for line in text.splitlines(keepends=True):
        if line.startswith("#"):
            continue
        if line[:1].isspace() and found:
            found[-1] += line
        else:
            found.append(line)
    return found


def package_of(row: str) -> str:
    """Whose pin a row is, without the extras that are asked of it."""
    return re.split(r"\[|==", row, maxsplit=1)[0]


def main() -> None:
    """Write both files: what the program needs, and what the tests need beside that."""
    upgrade = ["--upgrade"] if "--upgrade" in sys.argv[1:] else []
    run_pins, test_pins = HERE / "constraints.txt", HERE / "constraints-test.txt"
    with tempfile.TemporaryDirectory() as folder:
        run, both = Path(folder, "run.txt"), Path(folder, "both.txt")
        known = [path.read_text(encoding="utf-8") for path in (run_pins, test_pins) if path.exists()]
        for output in (run, both):  # uv keeps the versions it finds where it is to write
            output.write_text("".join(known), encoding="utf-8")
        compile_pins(run, *upgrade)
        compile_pins(both, *upgrade, "--extra", "test", "--constraint", str(run))
        program = rows(run.read_text(encoding="utf-8"))
        names = {package_of(row) for row in program}
        beside = [row for row in rows(both.read_text(encoding="utf-8")) if package_of(row) not in names]
    run_pins.write_text(TITLE.format("what the program runs on") + "".join(program), encoding="utf-8")
    test_pins.write_text(TITLE.format("what the tests need beside it") + "".join(beside), encoding="utf-8")


if __name__ == "__main__":
    main()
