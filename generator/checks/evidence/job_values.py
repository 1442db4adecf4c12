"""The numbers of a job by name: as typed, as worked out, and in the rows of a list."""

from collections.abc import Iterator

from generator.model import FormulaRef
from generator.problems import Location
from generator.study import Study
from generator.units import Quantity


def job_values(study: Study, name: str) -> Iterator[tuple[Quantity, Location]]:
    """Every quantity that the job holds under a name, with its place; also a column of a list of rows."""
    job = study.procedure.job
    for own, value in job.items():
        where = getattr(own, "where", study.procedure.spot("job"))
        if own == name and isinstance(value, Quantity):
            yield value, where
        elif own == name and isinstance(value, FormulaRef):
            worked_out = study.sums.value(value, f"job.{name}")
            if worked_out is not None:
                yield worked_out, where
        elif isinstance(value, tuple):
            yield from ((cell, where) for row in value if isinstance(cell := row.get(name), Quantity))
