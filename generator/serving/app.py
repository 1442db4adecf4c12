"""The preview as a small web application: pages with their newest bodies, files, and a stream of news."""

import asyncio
import json
import mimetypes
import re
from collections.abc import AsyncIterator
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response, StreamingResponse
from starlette.routing import Route

from generator.outputs.policy import write_policy
from generator.problems import Problem
from generator.serving.preview import Preview

SCRIPT = "_newel/preview.js"
_SCRIPTS = (SCRIPT, "_newel/beside.js")
_ARTICLE = re.compile(r'(<article class="md-content__inner md-typeset">).*?(</article>)', re.DOTALL)
_POLICY = re.compile(r'\n<meta http-equiv="Content-Security-Policy"[^>]*>')
_PAUSE = 0.005
_HEARTBEAT = 15.0


def preview_app(preview: Preview) -> Starlette:
    """Serve to this machine alone: a page of another site cannot reach it under a name of its own."""

    async def news(request: Request) -> Response:
        return StreamingResponse(_stream(preview, request), media_type="text/event-stream")

    async def show(request: Request) -> Response:
        return respond(preview, request.path_params["path"])

    hosts = Middleware(TrustedHostMiddleware, allowed_hosts=["127.0.0.1", "localhost"], www_redirect=False)
    return Starlette(routes=[Route("/_newel/news", news), Route("/{path:path}", show)], middleware=[hosts])


def respond(preview: Preview, path: str) -> Response:
    """A page with its newest body, or a file."""
    if path in _SCRIPTS:
        script = Path(__file__).parent / path.rpartition("/")[2]
        return Response(script.read_bytes(), media_type="text/javascript")
    wanted = f"{path}index.html" if path == "" or path.endswith("/") else path
    content = preview.file(wanted)
    if content is None and preview.file(f"{path}/index.html") is not None:
        return Response(status_code=307, headers={"location": f"/{path}/index.html"})
    if content is None and wanted.endswith("index.html") and not preview.body("index.html"):
        return HTMLResponse(_empty_page())
    if content is None:
        return Response("not found", 404, media_type="text/plain")
    if wanted.endswith(".html"):
        return HTMLResponse(fresh_page(content.decode(), preview.body(wanted), wanted))
    kind = mimetypes.guess_type(wanted)[0] or "application/octet-stream"
    return Response(content, media_type=kind, headers={"cache-control": "no-store"})


def fresh_page(html: str, body: str | None, path: str) -> str:
    """The engine's page with the newest body, the preview's scripts, and a policy for all of it together."""
    if body is not None:
        html = _ARTICLE.sub(lambda found: f"{found[1]}\n{body}\n{found[2]}", html, count=1)
    up = "../" * path.count("/")
    scripts = "".join(f'<script src="{up}{script}"></script>' for script in _SCRIPTS)
    return write_policy(_POLICY.sub("", html).replace("</body>", f"{scripts}</body>", 1))


def _empty_page() -> str:
    """What is shown before the first good build."""
    title = "Not built yet"
    text = "The lab has errors; they are listed below and go away as you mend them."
    return (
        f'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{title}</title></head>'
        f'<body><article class="md-content__inner md-typeset"><h1>{title}</h1><p>{text}</p></article>'
        f'<script src="/{SCRIPT}"></script></body></html>'
    )


async def _stream(preview: Preview, request: Request) -> AsyncIterator[str]:
    """One message for each build: its number, and the errors that keep it from being shown."""
    seen, silence = -1, 0.0
    while not await request.is_disconnected():
        if preview.version != seen:
            seen = preview.version
            errors = [_told(problem) for problem in preview.errors]
            yield f"data: {json.dumps({'version': seen, 'problems': errors})}\n\n"
        elif silence >= _HEARTBEAT:
            silence = 0.0
            yield ": still here\n\n"
        silence += _PAUSE
        await asyncio.sleep(_PAUSE)


def _told(problem: Problem) -> dict[str, str]:
    step = f", step {problem.step}" if problem.step else ""
    where = f"{problem.where}{step}"
    return {"rule": problem.rule, "where": where, "message": problem.message, "fix": problem.fix}
