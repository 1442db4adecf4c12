"""The files of a finished search index."""

from pathlib import Path

from generator.outputs.search_parts import SPLIT_ABOVE, index_files


def write_index(folder: Path, index: str, split_above: int = SPLIT_ABOVE) -> None:
    """Write an index into its folder; one of more bytes than `split_above` goes there in parts."""
    for name, text in index_files(index, split_above).items():
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8", newline="\n")
