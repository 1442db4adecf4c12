"""The solver against a published line: thirteen tanks, one hoist, a window for every stay.

The line is that of L. W. Phillips and P. S. Unger, "Mathematical programming solution of a hoist scheduling
program", AIIE Transactions 8 (1976), pages 219 to 225: a loading station and twelve stages, optimum 521 s.
The windows, loaded moves and empty moves are those of the instance "PuInstance" in the tests of Julien
Bernard's open scheduling library (C++, 2022 to 2025); the paper itself was not at hand.
"""

from functools import cache

from generator.planning import HANDS, Busy, Cycle, PlannedRun, Pointer, Rest, smallest_cycle

SHORTEST = 521
# Seconds in each tank from the loading station on: at least, at most (None: no limit), then the move.
STAGES = (
    (120, None, 31), (150, 200, 22), (90, 120, 22), (120, 180, 22), (90, 125, 25), (30, 40, 23),
    (60, 120, 22), (60, 120, 22), (45, 75, 22), (130, None, 47), (120, None, 27), (90, 120, 22),
    (30, 60, 30),
)  # fmt: skip
# The empty hoist from tank to tank, the lower half of a table that is the same both ways.
EMPTY = (
    (), (11,), (14, 2), (16, 5, 2), (14, 2, 0, 2), (19, 8, 5, 3, 5), (22, 10, 8, 5, 8, 3),
    (24, 13, 10, 8, 10, 5, 2), (26, 15, 13, 10, 13, 7, 5, 2), (29, 17, 15, 13, 15, 10, 7, 5, 2),
    (6, 10, 12, 15, 12, 18, 20, 23, 25, 27),
    (8, 3, 6, 8, 6, 11, 14, 16, 19, 21, 7), (10, 1, 3, 6, 3, 9, 11, 14, 16, 19, 9, 2),
)  # fmt: skip


def _empty(one: int, other: int) -> int:
    low, high = sorted((one % len(STAGES), other % len(STAGES)))
    return EMPTY[high][low] if low != high else 0


def _line() -> PlannedRun:
    """A block is a move; before it the part stays in its tank. The first block only begins the loading."""
    moves = [move for _, _, move in STAGES]
    stays = [Rest(least, least, most) for least, most, _ in STAGES]
    tanks = [
        Busy(f"tank-{n}", Pointer(n, 0.0 if n == 0 else moves[n - 1]), Pointer(n + 1, 0.0))
        for n in range(len(STAGES))
    ]
    hoist = [Busy(HANDS, Pointer(n + 1, 0.0), Pointer(n + 1, move)) for n, move in enumerate(moves)]
    back = Busy("tank-0", Pointer(len(moves), moves[-1]), Pointer(len(moves), moves[-1]))
    return PlannedRun("line", (0.0, *map(float, moves)), tuple(stays), (*tanks, *hoist, back))


@cache
def _found() -> Cycle:
    found = smallest_cycle(_line(), lambda i, j: _empty(i + 1, j), limit=100.0)
    assert found is not None
    return found


def test_the_shortest_cycle_of_the_published_line_is_found() -> None:
    assert _found().proven and _found().seconds == SHORTEST


def test_its_plan_keeps_every_window_and_the_hoist_is_never_in_two_places() -> None:
    found = _found()
    starts = found.blocks[1:]
    for stage in range(1, len(STAGES)):
        least, most, _ = STAGES[stage]
        stayed = starts[stage] - starts[stage - 1] - STAGES[stage - 1][2]
        assert least <= stayed <= (most or stayed) and stayed < found.seconds
    turn = sorted((start % found.seconds, stage) for stage, start in enumerate(starts))
    for (at, stage), (after, other) in zip(
        turn, [*turn[1:], (turn[0][0] + found.seconds, turn[0][1])], strict=True
    ):
        assert at + STAGES[stage][2] + _empty(stage + 1, other) <= after
