"""The policy allows the files of the site and the theme's own inline scripts, each by its hash."""

from generator.outputs.policy import write_policy

# Hash of the empty script by another program: printf '' | openssl dgst -sha256 -binary | base64
EMPTY = "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='"


def test_each_inline_script_is_allowed_once_by_its_hash() -> None:
    page = '<meta charset="utf-8"><script></script><script></script><script src="a.js"></script>'
    policy = write_policy(page)
    assert policy.count(EMPTY) == 1
    assert f"script-src 'self' {EMPTY};" in policy
    assert "unsafe" not in policy


def test_the_policy_stands_before_everything_it_governs() -> None:
    page = '<head><meta charset="utf-8"><link rel="stylesheet" href="a.css"></head>'
    written = write_policy(page)
    assert written.index("Content-Security-Policy") < written.index("stylesheet")
    assert "default-src 'none'; script-src 'self';" in written


def test_a_data_block_needs_no_hash() -> None:
    page = '<meta charset="utf-8"><script type="application/json">{}</script>'
    assert "sha256" not in write_policy(page)


def test_text_without_a_charset_is_left_alone() -> None:
    assert write_policy("<urlset/>") == "<urlset/>"
