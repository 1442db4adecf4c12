"""Values that come from formulas, each knowing where its inputs came from."""

from generator.sums.resolve import Input, Sum, Sums, work_out

__all__ = ["Input", "Sum", "Sums", "work_out"]
