"""Values as TOML writes them, for files that the program writes."""

from __future__ import annotations

import json

DELETE = "\x7f"
"""The one sign that JSON writes as it is and TOML does not allow (TOML 1.0, "String")."""


def quoted(text: str) -> str:
    r"""A text between quotation marks; JSON's escapes are among those of TOML.

    >>> print(quoted('the "Umbagog"\nand\x7f more'))
    "the \"Umbagog\"\nand\u007f more"
    """
    return json.dumps(text, ensure_ascii=False).replace(DELETE, "\\u007f")
