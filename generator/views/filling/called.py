"""Whom a card, a page or a sign names first to be called."""

import re
from collections.abc import Iterable

from generator.model import Step
from generator.study import Study


def called(study: Study, steps: Iterable[Step], rule: str) -> str:
    """The role that the stop rule names last, else the one that the steps call most often.

    Where they call nobody it is the approver. A role that cannot be reached is none to call.
    """
    said = rule.casefold()
    named = {
        said.rfind(word): str(id)
        for id, role in study.lab.roles.items()
        for word in (role.title.casefold(), str(id).replace("-", " "))
        if role.reach and re.search(rf"\b{re.escape(word)}\b", said)
    }
    if named:
        return named[max(named)]
    roles = [str(step.fail.call) for step in steps if step.fail and step.fail.call]
    return max(roles, key=roles.count) if roles else str(study.procedure.approver)
