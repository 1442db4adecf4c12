"""Which statement makes another one needless, because it says the same and more."""

# UN GHS 1.4.10.5.3.3 names H410/H400, H411/H401, H412/H402 and H314/H318 (read on two pages that quote it);
# the other rows follow from the order of the categories inside one class.
_COVERS: dict[str, tuple[str, ...]] = {
    "H224": ("H225", "H226", "H227"),
    "H225": ("H226", "H227"),
    "H226": ("H227",),
    "H271": ("H272",),
    "H300": ("H301", "H302", "H303"),
    "H301": ("H302", "H303"),
    "H302": ("H303",),
    "H304": ("H305",),
    "H310": ("H311", "H312", "H313"),
    "H311": ("H312", "H313"),
    "H312": ("H313",),
    "H314": ("H315", "H316", "H318", "H319", "H320"),
    "H315": ("H316",),
    "H318": ("H319", "H320"),
    "H319": ("H320",),
    "H330": ("H331", "H332", "H333"),
    "H331": ("H332", "H333"),
    "H332": ("H333",),
    "H340": ("H341",),
    "H350": ("H350i", "H351"),
    "H350i": ("H351",),
    "H360": ("H361",),
    "H360F": ("H361f",),
    "H360D": ("H361d",),
    "H360FD": ("H360F", "H360D", "H360Fd", "H360Df", "H361", "H361f", "H361d", "H361fd"),
    "H360Fd": ("H360F", "H361d", "H361f", "H361fd"),
    "H360Df": ("H360D", "H361f", "H361d", "H361fd"),
    "H361fd": ("H361f", "H361d"),
    "H370": ("H371",),
    "H372": ("H373",),
    "H400": ("H401", "H402"),
    "H401": ("H402",),
    "H410": ("H400", "H401", "H402", "H411", "H412", "H413"),
    "H411": ("H401", "H402", "H412", "H413"),
    "H412": ("H402", "H413"),
}


def stronger_covers(code: str) -> frozenset[str]:
    """Codes that need not be said beside this one: H314 covers H315, H318, H319 and the weaker irritants."""
    return frozenset(_COVERS.get(code, ()))


def covered_by(code: str, declared: tuple[str, ...]) -> str:
    """The declared code that says this one, itself or a stronger one; "" if none does."""
    singles = [part for item in declared for part in item.split("+")]
    if code in singles:
        return code
    return next((other for other in singles if code in stronger_covers(other)), "")


def shown_codes(codes: tuple[str, ...]) -> tuple[str, ...]:
    """The codes without those that a stronger one of them covers, in their order, each once."""
    unique = tuple(dict.fromkeys(codes))
    return tuple(c for c in unique if not any(c in stronger_covers(other) for other in unique if other != c))
