"""Sums of this lab that no book holds: each names where its numbers come from."""


def hardener_mass(resin, parts_resin=100, parts_hardener=30):
    """Hardener for a mass of casting resin.

    Decides: how much hardener to weigh. Unit: as resin.
    Source: the ratio printed on the supplier's can, invented for this lab.

    >>> round(hardener_mass(150), 1)
    45.0
    """
    return resin * parts_hardener / parts_resin
