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
            own = [topic for topic in topics() if topic.kind == kind]
            width = max(len(topic.word) for topic in own)
            say(f"{kind}:")
            for topic in own:
                say(f"  {topic.word:<{width}}  {shorten(topic.title, 110, placeholder=' …')}")
        return 0
    topic = called(" ".join(words))
    say(topic.text)
    if topic.kind == KINDS[3]:
        from jobsheet.storage.shop_file import workshop

        say(f"Here: {getattr(workshop(), topic.id.replace('-', '_'))}")
    return 0
