"""Which pieces go into the container of a step that takes clothes off, where others are worn again."""

from generator.model import Step
from generator.study import Study


def discarded(study: Study, step: Step) -> tuple[str, ...]:
    """The ids of the pieces thrown away, where a step names a container and takes off others that are kept.

    Empty where all that comes off is thrown away: then the container alone says it.
    """
    if step.do != "wear" or step.waste is None:
        return ()
    off = dict.fromkeys((*step.take_off, *(step.put_on if step.fresh else ())))
    kept = {piece for piece in off if (worn := study.lab.ppe.get(piece)) and worn.used_again}
    return tuple(str(piece) for piece in off if piece not in kept) if kept else ()
