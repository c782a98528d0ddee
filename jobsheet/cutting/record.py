"""Values with named fields that cannot be changed; as a frozen dataclass, which takes longer to declare."""

from __future__ import annotations

from inspect import get_annotations
from typing import Any, NoReturn, dataclass_transform


@dataclass_transform(frozen_default=True)
class Record:
    """The fields of a subclass are its annotations, in their order; all of them are given when it is made."""

    _names: tuple[str, ...] = ()

    def __init_subclass__(cls) -> None:
        cls._names = tuple(get_annotations(cls))

    def __init__(self, *given: Any, **named: Any) -> None:
        names = self._names
        fields = dict(zip(names, given, strict=False)) | named
        if (
            len(given) + len(named) != len(names)
            or len(fields) != len(names)
            or not named.keys() <= set(names)
        ):
            raise TypeError(f"{type(self).__name__} takes {', '.join(names)}, each once")
        self.__dict__.update(fields)

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"{type(self).__name__} cannot be changed: {name} = {value!r}")

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"{type(self).__name__} cannot be changed: {name}")

    def __eq__(self, other: object) -> bool:
        if type(other) is not type(self):
            return NotImplemented
        return all(self.__dict__[name] == other.__dict__[name] for name in self._names)

    def __hash__(self) -> int:
        return hash(tuple(self.__dict__[name] for name in self._names))

    def __repr__(self) -> str:
        return (
            f"{type(self).__name__}({', '.join(f'{name}={self.__dict__[name]!r}' for name in self._names)})"
        )
