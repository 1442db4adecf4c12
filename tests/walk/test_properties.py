"""The walk never crashes, keeps to its bounds, and says of every moment how the work came there."""

import random
from typing import Any

import pytest

from generator.walk import MOST_MOMENTS, Walk
from tests.walk.planting import ID, check_data, demo


def _shuffled(seed: int) -> Any:
    procedure, lab = demo()
    rng = random.Random(seed)
    steps = [step for stage in procedure["stages"] for step in stage["steps"]]
    rng.shuffle(steps)
    for stage in procedure["stages"]:
        count = len(stage["steps"])
        stage["steps"], steps = steps[:count], steps[count:]
    return procedure, lab


@pytest.mark.parametrize("seed", range(20))
def test_shuffled_steps_are_walked_and_judged_without_a_crash(seed: int) -> None:
    checked = check_data(*_shuffled(seed))
    walk = checked.studies[ID].walk
    assert walk.finished and 0 < len(walk.moments) <= MOST_MOMENTS
    assert checked.has_errors


def _links(walk: Walk) -> list[tuple[int, int]]:
    """Neighbouring moments of one path whose states do not join."""
    rests = [rest.resumed for rest in walk.rests]
    loose = []
    for one, other in zip(walk.moments, walk.moments[1:], strict=False):
        if one.path == other.path and other.before is not one.after and other.before not in rests:
            loose.append((one.order, other.order))
    return loose


@pytest.mark.parametrize("seed", [None, *range(5)])
def test_every_path_replays_from_state_to_state(seed: int | None) -> None:
    checked = check_data(*(demo() if seed is None else _shuffled(seed)))
    assert _links(checked.studies[ID].walk) == []


def test_a_redo_starts_where_its_check_left_off() -> None:
    walk = check_data(*demo()).studies[ID].walk
    for path in walk.paths:
        first = next((moment for moment in walk.moments if moment.path == path), None)
        if first is None or not path.startswith("after ") or "every check" in path:
            continue
        if "pause" in path:
            assert first.before in [rest.resumed for rest in walk.rests]
        else:
            check = path.split()[1]
            assert any(m.straight and m.step.id == check and m.after is first.before for m in walk.moments)


def test_time_never_runs_backwards() -> None:
    walk = check_data(*demo()).studies[ID].walk
    for moment in walk.moments:
        assert moment.after.clock.shortest >= moment.before.clock.shortest
        assert moment.after.clock.longest >= moment.after.clock.shortest


def test_two_thousand_steps_are_refused_in_bounded_time() -> None:
    procedure, lab = demo()
    idle = [{"id": f"idle-{n}", "do": "act", "say": "Wait."} for n in range(2000)]
    procedure["stages"][0]["steps"] += idle
    checked = check_data(procedure, lab)
    assert "walk-too-long" in {problem.rule for problem in checked.problems}


def test_a_hundred_checks_that_all_go_back_to_the_start_stop_at_the_bound() -> None:
    procedure, lab = demo()
    look = {"do": "check", "say": "Look.", "check": "no film", "takes": "1 min"}
    fail = {"redo": "save-job", "at_most": "5", "call": "technician"}
    checks = [{"id": f"look-{n}", **look, "fail": fail} for n in range(100)]
    procedure["stages"][-1]["steps"] += checks
    checked = check_data(procedure, lab)
    assert "walk-too-long" in {problem.rule for problem in checked.problems}
    assert len(checked.studies[ID].walk.moments) <= MOST_MOMENTS
