"""`jobsheet why [WORDS] [--list]`: what a remark, a reminder, a safety note or a choice of
the trade asks, and by whose word.
"""

from __future__ import annotations

from textwrap import shorten

import click

from jobsheet.cli.output import say


@click.command("why")
@click.argument("words", nargs=-1)
@click.option("--list", "want_list", is_flag=True, help="everything that can be asked, one in a line")
def command(words: tuple[str, ...], want_list: bool) -> int:
    """Say why a remark, a reminder, a safety note or a choice of the trade is
    there; without words list them all.

    WORDS is its title, in part or whole: jobsheet why spot before drilling. The
    id that stands in a file serves too.
    """
    from jobsheet.review.pages.explained import KINDS, called, topics

    if not words or want_list:
        for kind in KINDS:
            own = [one for one in topics() if one.kind == kind]
            width = max(len(one.word) for one in own)
            say(f"{kind}:")
            for one in own:
                say(f"  {one.word:<{width}}  {shorten(one.title, 110, placeholder=' …')}")
        return 0
    found = called(" ".join(words))
    say(found.text)
    if found.kind == KINDS[3]:
        from jobsheet.storage.shop_file import workshop

        say(f"Here: {getattr(workshop(), found.id.replace('-', '_'))}")
    return 0
