"""The preview as a small web application: pages with their newest bodies, files, and a stream of news."""

import asyncio
import json
import mimetypes
from collections.abc import AsyncIterator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response, StreamingResponse
from starlette.routing import Route

from generator.outputs.page import heads_of, join_sections
from generator.problems import Problem
from generator.serving.preview import Preview, Shown
from generator.serving.shell import SCRIPTS

_HEARTBEAT = 15.0
_FRESH = {"cache-control": "no-store"}


def preview_app(preview: Preview) -> Starlette:
    """Serve to this machine alone: a page of another site cannot reach it under a name of its own."""

    async def news(request: Request) -> Response:
        asked = request.query_params
        stream = _stream(preview, asked.get("page", ""), asked.get("version", ""))
        return StreamingResponse(stream, media_type="text/event-stream", headers=_FRESH)

    async def show(request: Request) -> Response:
        return respond(preview.shown, request.path_params["path"])

    hosts = Middleware(TrustedHostMiddleware, allowed_hosts=["127.0.0.1", "localhost"], www_redirect=False)
    return Starlette(routes=[Route("/_newel/news", news), Route("/{path:path}", show)], middleware=[hosts])


def respond(shown: Shown, path: str) -> Response:
    """A page with its newest body, or a file."""
    if path in SCRIPTS:
        script = Path(__file__).parent / path.rpartition("/")[2]
        return Response(script.read_bytes(), media_type="text/javascript")
    wanted = f"{path}index.html" if path == "" or path.endswith("/") else path
    html = shown.html(wanted)
    if html is not None:
        return HTMLResponse(html)
    if wanted.endswith("index.html") and not shown.pages:
        return HTMLResponse(_empty_page())
    if f"{path}/index.html" in shown.pages:
        return Response(status_code=307, headers={"location": f"/{path}/index.html"})
    content = shown.file(wanted)
    if content is None:
        return Response("not found", 404, media_type="text/plain")
    kind = mimetypes.guess_type(wanted)[0] or "application/octet-stream"
    return Response(content, media_type=kind, headers=_FRESH)


def _empty_page() -> str:
    """What is shown before the first good build."""
    title = "Not built yet"
    text = "The lab has errors; they are listed below and go away as you mend them."
    return (
        f'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{title}</title></head>'
        f'<body><article class="md-content__inner md-typeset"><h1>{title}</h1><p>{text}</p></article>'
        f'<script src="/{SCRIPTS[0]}"></script></body></html>'
    )


async def _stream(preview: Preview, path: str, version: str) -> AsyncIterator[str]:
    """One message for each build; in it the page at the path, where it is not what the reader has.

    `version` is that of the page when it was opened, "" for a reader who wants the numbers alone.
    """
    loop, woken = asyncio.get_running_loop(), asyncio.Event()

    def wake() -> None:
        with suppress(RuntimeError):  # the server has ended
            loop.call_soon_threadsafe(woken.set)

    with preview.telling(path, wake):
        shown = preview.shown
        read = int(version) if version.isdecimal() else shown.version
        yield _news(shown, path, replace(shown, version=read, pages={}, seen={}))
        loop.run_in_executor(None, preview.expect, path)
        while True:
            try:
                async with asyncio.timeout(_HEARTBEAT):
                    await woken.wait()
            except TimeoutError:
                yield ": still here\n\n"
                continue
            woken.clear()
            if preview.ended:
                return
            now = preview.shown
            yield _news(now, path, shown)
            shown = now  # not before: with it goes all that a build of a thousand procedures made anew


def _news(shown: Shown, path: str, before: Shown) -> str:
    """The number of the build, the errors that keep it from being shown, and the page where it is new."""
    told: dict[str, object] = {"version": shown.version, "problems": list(map(_told, shown.errors))}
    (page, since), (has, _) = shown.page(path), before.page(path)
    if page is not None and since > before.version:
        # Where the reader has another title or another list of contents, more than the article is new.
        same = has is not None and (page.title, heads_of(page)) == (has.title, heads_of(has))
        told |= {"article": join_sections(page)} if same else {"reload": True}
    return f"data: {json.dumps(told)}\n\n"


def _told(problem: Problem) -> dict[str, str]:
    step = f", step {problem.step}" if problem.step else ""
    where = f"{problem.where}{step}"
    return {"rule": problem.rule, "where": where, "message": problem.message, "fix": problem.fix}
