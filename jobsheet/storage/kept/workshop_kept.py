"""What a workshop always wants, written into its `workshop.yaml` beside all that stands there already."""

from __future__ import annotations

from jobsheet.catalog.reading.strict_yaml import parse, read_file
from jobsheet.errors import CannotWrite, DocumentError
from jobsheet.model.prints import PRINTS, Prints
from jobsheet.paths import own_folder
from jobsheet.storage.disk import digest, write_file
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.shop_file import NAME, shop_from_text
from jobsheet.storage.typed_paper import Group, Paper, Part, with_value


def keep_prints(wanted: Prints, paper: str) -> None:
    """Keep these pages and this paper as what is printed where nobody says
    otherwise; which steps is never kept.

    Raises
    ------
    DocumentError
        If the file that is there cannot be used; it stays as it is.
    CannotWrite, ChangedOutside
        As `write_file`.
    """
    said = {f"print {name}": "yes" if name in wanted.pages else "no" for name in PRINTS}
    _keep({**said, "paper": paper})


def _keep(values: dict[str, str]) -> None:
    path = own_folder() / NAME
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        raw = path.read_bytes() if path.exists() else b""
    except OSError as error:
        raise CannotWrite(f"{path} cannot be read: {error.strerror or error}.") from None
    made = _typed(read_file(path)) if raw else Paper(Group((Part("1", "format"),)))
    for name, text in values.items():
        made = with_value(made, (_as_typed(made, name),), text)
    write_file(
        path,
        paper_text(made),
        digest(raw) if raw else None,
        lambda back: shop_from_text(parse(back, NAME), NAME),
    )


def _typed(text: str) -> Paper:
    """The file as typed; refused where it cannot be used as it is, so that nothing of it is made worse."""
    root = parse(text, NAME)
    shop_from_text(root, NAME)
    if root.fields is None:
        raise DocumentError(NAME, ())
    return paper_from_text(text, NAME)


def _as_typed(paper: Paper, name: str) -> str:
    """The name as it stands in the file: a person may have written it with a
    line below instead of a blank.
    """
    return next((part.name for part in paper.root.parts if part.name.strip().replace("_", " ") == name), name)
