"""The whole flow: read, study, check, build; no disk, no clock."""

from generator.pipeline.check import Checked, check, check_procedure

__all__ = ["Checked", "check", "check_procedure"]
