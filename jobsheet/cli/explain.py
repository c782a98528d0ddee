"""`jobsheet explain [RULE] [--list]`: what a remark asks, why, what is wrong and right, and where it comes from."""

from __future__ import annotations

import click

from jobsheet.errors import NoSuchEntry


@click.command("explain")
@click.argument("rule", required=False)
@click.option("--list", "want_list", is_flag=True, help="every remark in one line")
def command(rule: str | None, want_list: bool) -> int:
    """Explain a remark; without a name list all of them."""
    from jobsheet.review.engine import rules
    from jobsheet.review.help_page import explained

    known = {one.id: one for one in rules()}
    if rule is None or want_list:
        width = max(len(name) for name in known)
        for one in known.values():
            click.echo(f"{one.severity:<7} {one.id:<{width}}  {one.title}")
        return 0
    if rule not in known:
        from jobsheet.units.grammar import nearest

        near = nearest(rule, tuple(known))
        hint = f"did you mean {near}?" if near else "jobsheet explain --list names them all"
        raise NoSuchEntry(f"there is no remark called “{rule}”; {hint}")
    click.echo(explained(known[rule]))
    return 0
