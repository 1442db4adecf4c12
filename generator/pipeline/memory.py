"""What one process has made, for as long as it builds again and again."""

from collections.abc import Iterable

from generator.pipeline.looks import Ground, Looks
from generator.pipeline.slips import Slip


class Memory:
    """What earlier builds of this process made, ready to use, with the seal of the lab where it last held."""

    _MOST = 20_000

    def __init__(self) -> None:
        self._rows: dict[str, tuple[Looks, object, str]] = {}
        self._linked: tuple[object, frozenset[str]] = (None, frozenset())

    def unlinked(self, there: object, slips: tuple[Slip, ...]) -> tuple[Slip, ...]:
        """The pages whose links were not looked up before among the same addresses and files."""
        seen = self._linked[1] if self._linked[0] == there else frozenset()
        return tuple(slip for slip in slips if slip.key not in seen)

    def keep_linked(self, there: object, slips: Iterable[Slip]) -> None:
        """All links of these pages lead somewhere in what is there."""
        self._linked = (there, frozenset(slip.key for slip in slips))

    def find(self, key: str, ground: Ground) -> object | None:
        """What was made under the key and still holds."""
        row = self._rows.get(key)
        if row is None or not (row[2] == ground.seal or ground.holds(row[0])):
            return None
        self._rows[key] = (*row[:2], ground.seal)
        return row[1]

    def keep(self, key: str, looks: Looks, made: object, ground: Ground) -> None:
        """Have it ready for the next build."""
        if len(self._rows) >= self._MOST:
            self._rows.clear()
        self._rows[key] = (looks, made, ground.seal)
