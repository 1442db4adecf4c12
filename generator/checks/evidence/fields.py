"""The tables of fields in which one noun names another, with the kind of noun that each names."""

# noun of the lab, field (a dot leads into a field's own fields), what the field names
LAB_FIELDS: tuple[tuple[str, str, str], ...] = (
    ("roles", "backup", "role"),
    ("roles", "needs", "sign-off"),
    ("signoffs", "given_by", "role"),
    ("ppe", "over", "piece of PPE"),
    ("ppe", "against", "hazard"),
    ("mixtures", "made_of", "substance or mixture"),
    ("mixtures", "wear", "piece of PPE"),
    ("mixtures", "leftovers", "container"),
    ("places", "holds", "mixture"),
    ("places", "allows", "residue"),
    ("places", "clears", "residue"),
    ("places", "leaves", "residue"),
    ("places", "wear", "piece of PPE"),
    ("places", "drains_to", "container"),
    ("places", "not_right.call", "role"),
    ("places", "timer", "timer"),
    ("places", "keeper", "role"),
    ("waste", "takes", "waste"),
    ("waste", "pickup", "role"),
    ("waste", "to_drain.decided_by", "role"),
)
# of what stands in lists of the lab
LIST_FIELDS: tuple[tuple[str, str, str], ...] = (
    ("keep_apart", "groups", "group"),
    ("keep_apart", "small.decided_by", "role"),
    ("accept", "rule", "rule"),
    ("accept", "place", "place"),
    ("accept", "thing", "thing"),
    ("accept", "who", "role"),
)
ROOM_FIELDS = (
    ("base_wear", "piece of PPE"),
    ("who_may_print", "role"),
    ("help.waste_questions", "role"),
)
PROCEDURE_FIELDS = (
    ("who", "role"),
    ("also_present", "role"),
    ("written_by", "role"),
    ("approver", "role"),
    ("limits", "value of the job"),
    ("part.starts.at", "place"),
    ("part.starts.residues", "residue"),
    ("part.ends.at", "place"),
    ("part.ends.residues", "residue"),
    ("vendor_papers.decided_by", "role"),
    ("you_may_see.at", "step"),
    ("cards.post_at", "place"),
    ("accept.rule", "rule"),
    ("accept.step", "step"),
    ("accept.place", "place"),
    ("accept.thing", "thing"),
    ("accept.who", "role"),
)
STEP_FIELDS = (
    ("at", "place"),
    ("into", "vessel"),
    ("use", "substance or mixture"),
    ("use", "value"),
    ("alarm", "timer"),
    ("fail.redo", "step of the run"),
    ("fail.call", "role"),
    ("watch.fail.redo", "step of the run"),
    ("watch.fail.call", "role"),
    ("hold.who", "role"),
    ("since.step", "step"),
    ("put_on", "piece of PPE"),
    ("take_off", "piece of PPE"),
    ("rack", "rack"),
    ("waste", "container"),
    ("who", "role"),
)
CALLS = (("fail.call", "role"), ("watch.fail.call", "role"))
# Words of these kinds are free; only one that is nearly a declared name is taken for a mistyped one.
FREE = {"waste", "group"}
