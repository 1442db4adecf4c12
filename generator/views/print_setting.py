"""What a printed hazard document or label needs beside its view: language, day, where it belongs, draft."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PrintSetting:
    """Language tag, ISO date, words for the foot, and the word across a draft ("" for none)."""

    language: str
    dated: str
    foot: str
    draft: str = ""
