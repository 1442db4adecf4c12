"""The day that a run speaks of: the face alone looks at a clock."""

import os
from datetime import UTC, date, datetime

from generator.problems import NewelError


def day_of_run() -> date:
    """Today, or the day that SOURCE_DATE_EPOCH names, in UTC, so that a run can be repeated exactly."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    if not epoch:
        return datetime.now().astimezone().date()
    try:
        return datetime.fromtimestamp(int(epoch), UTC).date()
    except (ValueError, OverflowError, OSError) as bad:
        raise NewelError("no-day", f"SOURCE_DATE_EPOCH is no number of seconds: {epoch}",
                         "the day of a check comes from it where it is set", "unset it") from bad  # fmt: skip
