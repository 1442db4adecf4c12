"""From a folder of author's files to a located lab, with all that is wrong in one go."""

from generator.reading.address import EditAddress, edit_address, site_address
from generator.reading.folder import Folder, find_folder, open_folder
from generator.reading.lab import LabRead, ProcedureFile, read_lab, read_nouns, read_one
from generator.reading.reread import reread_folder
from generator.reading.schema import json_schemas

__all__ = [
    "EditAddress",
    "Folder",
    "LabRead",
    "ProcedureFile",
    "edit_address",
    "find_folder",
    "json_schemas",
    "open_folder",
    "read_lab",
    "read_nouns",
    "read_one",
    "reread_folder",
    "site_address",
]
