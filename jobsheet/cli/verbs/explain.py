"""`jobsheet explain [ID] [--list]`: what a remark, a reminder, a safety note or a choice of the trade says, and why."""

from __future__ import annotations

from textwrap import shorten

import click

from jobsheet.errors import NoSuchEntry


@click.command("explain")
@click.argument("name", metavar="[ID]", required=False)
@click.option("--list", "want_list", is_flag=True, help="everything that can be explained, one in a line")
def command(name: str | None, want_list: bool) -> int:
    """Explain a remark, a reminder, a safety note or a choice of the trade; without an id list them all."""
    from jobsheet.review.pages.explained import KINDS, topics

    known = {one.id: one for one in topics()}
    if name is None or want_list:
        for kind in KINDS:
            own = [one for one in known.values() if one.kind == kind]
            width, words = max(len(one.id) for one in own), max(len(one.word) for one in own)
            click.echo(f"{kind}:")
            for one in own:
                click.echo(
                    f"  {one.word:<{words}}  {one.id:<{width}}  {shorten(one.title, 90, placeholder=' …')}"
                )
        return 0
    if name not in known:
        from jobsheet.units.grammar import nearest

        near = nearest(name, tuple(known))
        hint = f"did you mean {near}?" if near else "jobsheet explain --list names them all"
        raise NoSuchEntry(f"there is no remark, reminder, safety note or choice called “{name}”; {hint}")
    click.echo(known[name].text)
    if known[name].kind == KINDS[3]:
        from jobsheet.storage.shop_file import workshop

        click.echo(f"Here: {getattr(workshop(), name.replace('-', '_'))}")
    return 0
