"""A verb before a sentence: one that begins with it does not say it twice."""


def said(verb: str, sentence: str) -> tuple[str, str]:
    """The verb in capitals and what follows: ("EMPTY", "the tray."), ("TAKE", "the rack out.").

    A sentence that begins with the verb, or with its first word, is led by its own.
    """
    words, first = sentence.split(" "), verb.split(" ")
    same = 0
    while same < min(len(words), len(first)) and words[same].upper().rstrip(".,") == first[same]:
        same += 1
    return " ".join(words[:same]).upper() or verb, " ".join(words[same:])
