"""How much of each session is left for work."""

from generator.checks.evidence.moments import minutes
from generator.study import Study
from generator.walk import Stretch


def longest_step(stretch: Stretch) -> str:
    """Which step takes the most of a stretch, in words: often it is there that a unit was mistyped."""
    return f"its longest step is {stretch.longest} with {minutes(stretch.longest_seconds)}"


def session_times(study: Study) -> tuple[tuple[str, float], ...]:
    """Each session's name and its seconds without pack-up."""
    room = study.lab.lab
    pack_up = room.pack_up.si if room.pack_up else 0.0
    return tuple(
        (str(session.name), (session.until.minutes - session.from_.minutes) * 60.0 - pack_up)
        for session in room.sessions
    )
