"""What the rules about sentences know of English: verbs of the bench and how a command is built."""

import re
from collections.abc import Iterator
from functools import lru_cache

# Verbs that begin a command at the bench. Many are nouns too (coat, drip, heat), so an object must follow.
_VERBS = (
    "add adjust aim apply ask attach bin blow book bring bury call carry centre change check clamp clean "
    "clear close coat collect compare connect cool count cover crush cut decant detach dilute dip discard "
    "disconnect dispose drain drill drip drop dry empty etch fetch fill filter find fit fix flush go "
    "grind grip hang heat hold insert keep label lay leave lift loosen look lower mark measure mix mop "
    "mount move note open peel pick place plug polish pour press pull push put raise read record release "
    "remove rest rinse rock rub save scrape screw seal set shake show shut sieve slide soak spray spread "
    "stand start stay step stir stop strike swab sweep switch take tap tell test tighten tilt tip top "
    "touch transfer turn twist unplug vacuum wait wash watch wear weigh wet wipe write"
)
VERBS = frozenset(_VERBS.split())

_OBJECT = (
    r"(?:the|a|an|it|them|this|that|these|those|your|both|all|each|every|any|one|two|three|slowly|gently|up|down|in|into|"
    r"on|onto|off|out|over|under|away|back|again|for|until|with|from|at|to|straight|first|no|nothing|more)\b"
)
_COMMAND = re.compile(
    rf"(?:then |now |first |always |please |only )*(?P<verb>[a-z]+)(?: {_OBJECT}|$)", re.IGNORECASE
)
_CONDITION = re.compile(
    r"(?:if|when|once|after|before|while|with|as soon as|as long as)\b[^,]*,\s*", re.IGNORECASE
)
_FULL_STOP = re.compile(r"[.!?;](?:\s+|$)")
_BESIDE = re.compile(r"\b(?:before|until|when|while|so that|because|if|unless|after)\b.*", re.IGNORECASE)


@lru_cache(maxsize=4096)
def sentences(text: str) -> tuple[str, ...]:
    """The single sentences of a text, without their full stops."""
    return tuple(piece.strip() for piece in _FULL_STOP.split(text) if piece.strip())


@lru_cache(maxsize=4096)
def clauses(text: str) -> tuple[str, ...]:
    """Main clauses in small letters: conditions and what hangs on "before", "until", "so that" left out."""
    return tuple(_clauses(text))


def _clauses(text: str) -> Iterator[str]:
    for sentence in sentences(text):
        rest = _BESIDE.sub("", _CONDITION.sub("", sentence)).strip()
        yield from (part.strip().lower() for part in re.split(r",| and then | then ", rest) if part.strip())


@lru_cache(maxsize=4096)
def commanded(clause: str) -> str:
    """The verb with which a clause gives a command, or an empty text."""
    found = _COMMAND.match(clause.strip())
    verb = found["verb"].lower() if found else ""
    return verb if verb in VERBS else ""


def without_condition(sentence: str) -> str:
    """A sentence without the condition in front of it."""
    return _CONDITION.sub("", sentence, count=1)
