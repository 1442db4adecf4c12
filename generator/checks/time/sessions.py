"""How much of each session is left for work."""

from generator.study import Study


def session_times(study: Study) -> tuple[tuple[str, float], ...]:
    """Each session's name and its seconds without pack-up."""
    room = study.lab.lab
    pack_up = room.pack_up.si if room.pack_up else 0.0
    return tuple(
        (str(session.name), (session.until.minutes - session.from_.minutes) * 60.0 - pack_up)
        for session in room.sessions
    )
