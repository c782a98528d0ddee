"""The command line: one verb a file, found by walking `verbs/` and imported when it is called."""

from __future__ import annotations

import importlib
import sys
from collections.abc import Callable
from pathlib import Path

import click

from jobsheet.cli.output import say
from jobsheet.errors import DocumentError, JobsheetError, begun_large

#: One verb a file; a file that begins with an underscore is none.
_VERBS = Path(__file__).parent / "verbs"


class Verbs(click.Group):
    """Knows its verbs by their files; only the one that is called is imported."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The verbs, in the order of the alphabet."""
        del ctx
        names = (path.stem for path in _VERBS.glob("[!_]*.py"))
        return sorted(name.replace("_", "-") for name in names)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The verb of that name, or None."""
        if cmd_name not in self.list_commands(ctx):
            return None
        command: click.Command = importlib.import_module(
            f"jobsheet.cli.verbs.{cmd_name.replace('-', '_')}"
        ).command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The verb asked for; a file without one is opened in the window."""
        word = args[0]
        if word in self.list_commands(ctx) or not _means_a_file(word):
            return super().resolve_command(ctx, args)
        return super().resolve_command(ctx, ["open", *args])


def _means_a_file(word: str) -> bool:
    """Whether a word is no misspelt verb but a file, whether it is there or not."""
    return Path(word).suffix.lower() in {".yaml", ".yml", ".pdf"} or Path(word).is_file()


@click.command(cls=Verbs, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="jobsheet", message="%(prog)s %(version)s")
def group() -> None:
    """Plan a job on a manual milling machine, see what it asks, print the set-up sheet.

    Without a command the window opens. Exit codes: 0 good, 1 read, but something should stop you,
    2 cannot be read.
    """


def run(arguments: list[str], open_window: Callable[[str | None], int]) -> int:
    """Run one verb; expected failures become lines on standard error, never a traceback."""
    try:
        result = group.main(arguments, prog_name="jobsheet", standalone_mode=False, obj=open_window)
    except click.exceptions.Exit as end:
        return end.exit_code
    except click.ClickException as error:
        if isinstance(error, click.UsageError) and error.ctx is not None:
            say(error.ctx.get_usage(), err=True)
        say(f"Error: {' '.join(error.format_message().split())}", err=True)
        return 2
    except click.Abort:
        say("Stopped.", err=True)
        return 2
    except DocumentError as error:
        say(str(error), err=True)
        return 2
    except JobsheetError as error:
        say(begun_large(" ".join(str(error).split())), err=True)
        return 2
    except BrokenPipeError:
        # Somebody reads only the first lines (`| head`): no fault of ours. Closed so that the exit is quiet.
        sys.stderr.close()
        return 0
    return int(result or 0)
