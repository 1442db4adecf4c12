"""The content security policy of a finished page: nothing but what the page was built with."""

import re
from base64 import b64encode
from hashlib import sha256

_INLINE = re.compile(r"<script>(.*?)</script>", re.DOTALL)
_CHARSET = '<meta charset="utf-8">'
_REST = (
    "img-src 'self' data:; font-src 'self'; connect-src 'self'; worker-src 'self'; "
    "frame-src 'self'; manifest-src 'self'; media-src 'self'; base-uri 'none'; form-action 'none'"
)


def write_policy(html: str, own_styles: bool = False) -> str:
    """Return the page with its policy as the first thing after its charset.

    `own_styles` is for an engine whose script writes styles into the page; ours have files alone.

    Each inline script of the engine's theme without attributes is allowed by its own hash; ours are files.
    A page without the charset is returned as it came.
    """
    hashes = " ".join(dict.fromkeys(_hash(script) for script in _INLINE.findall(html)))
    allowed = f"'self' {hashes}".rstrip()
    styles = "'self' 'unsafe-inline'" if own_styles else "'self'"
    policy = f"default-src 'none'; script-src {allowed}; style-src {styles}; {_REST}"
    meta = f'{_CHARSET}\n<meta http-equiv="Content-Security-Policy" content="{policy}">'
    return html.replace(_CHARSET, meta, 1)


def _hash(script: str) -> str:
    return f"'sha256-{b64encode(sha256(script.encode()).digest()).decode()}'"
