"""What the press made before, taken again where nothing that it was made from has changed."""

import hashlib
from collections.abc import Callable
from typing import Protocol

# An object that shows itself by where it lies in memory cannot stand in a key.
_BY_PLACE = " object at 0x"


class Kept(Protocol):
    """Bytes kept from earlier builds by the key of what they were made from."""

    def get(self, key: str) -> bytes | None:
        """The bytes of a key, None where there are none."""

    def put(self, key: str, content: bytes) -> bool:
        """Keep bytes under a key; says whether they will be there when asked for."""


class NothingKept:
    """Keeps nothing."""

    def get(self, key: str) -> bytes | None:  # noqa: ARG002
        """Nothing."""
        return None

    def put(self, key: str, content: bytes) -> bool:  # noqa: ARG002
        """Let go of them."""
        return False


NOTHING_KEPT = NothingKept()


def key_of(kind: str, *parts: object) -> str:
    """The key of what is made from finished values, empty where one of them does not show what it is."""
    shown = f"{kind}\0{parts!r}"
    return "" if _BY_PLACE in shown else hashlib.sha256(shown.encode("utf-8", "surrogatepass")).hexdigest()


def plain_key(kind: str, *parts: object) -> str:
    """The key of texts and numbers, which always show what they are."""
    return hashlib.sha256(f"{kind}\0{parts!r}".encode("utf-8", "surrogatepass")).hexdigest()


def content_key(kind: str, content: bytes) -> str:
    """The key of bytes that are kept for what they are, whatever they were made from."""
    return hashlib.sha256(kind.encode() + b"\0" + content).hexdigest()


def kept_or_made(kept: Kept, key: str, make: Callable[[], bytes]) -> bytes:
    """The bytes of a key from the store, else made now and kept; an error while making keeps nothing."""
    if not key:
        return make()
    found = kept.get(key)
    if found is None:
        found = make()
        kept.put(key, found)
    return found


class SureKept:
    """A store that keeps in memory what the one behind it does not take: what was made is not made again."""

    def __init__(self, kept: Kept) -> None:
        self._kept = kept
        self._here: dict[str, bytes] = {}

    def get(self, key: str) -> bytes | None:
        """The bytes of a key."""
        found = self._here.get(key)
        return self._kept.get(key) if found is None else found

    def put(self, key: str, content: bytes) -> bool:
        """Keep bytes, which will be there when asked for."""
        if not self._kept.put(key, content):
            self._here[key] = content
        return True


class PausingKept:
    """A store before each look into which a build may be ended; what it has put in by then stays there."""

    def __init__(self, kept: Kept, pause: Callable[[], None]) -> None:
        self._kept = kept
        self.pause = pause

    def get(self, key: str) -> bytes | None:
        """Pause, then the bytes of a key."""
        self.pause()
        return self._kept.get(key)

    def put(self, key: str, content: bytes) -> bool:
        """Keep bytes."""
        return self._kept.put(key, content)
