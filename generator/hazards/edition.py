"""Which set of precautionary statements a lab uses; the two are never mixed."""

from enum import StrEnum


class Edition(StrEnum):
    """UN GHS Rev. 10 (2023), or the EU's Regulation (EC) No 1272/2008 (CLP)."""

    REV10 = "rev10"
    CLP = "clp"

    @property
    def full_name(self) -> str:
        """The name to print beside the codes."""
        return _TITLES[self]


_TITLES = {Edition.REV10: "UN GHS Rev. 10", Edition.CLP: "CLP (Regulation (EC) No 1272/2008)"}
