from threading import Thread

from generator.pipeline.freshness import path_on_host
from generator.pipeline.order import Order
from generator.publishing.serving import SiteServer

from .conftest import Run


def test_a_published_site_is_compared_with_the_build(built_bakery: Order, run: Run) -> None:
    with SiteServer(built_bakery.site, path_on_host(built_bakery), 18200) as server:
        Thread(target=server.serve_forever, args=(0.01,), daemon=True).start()
        answer = run("verify", server.address, "--into", built_bakery.into)
        assert (answer.status, answer.err) == (0, "")
        files = sum(path.is_file() for path in built_bakery.site.rglob("*"))
        assert answer.out == f"All {files} files at {server.address} are as they were built.\n"
        server.shutdown()


def test_without_https_it_is_refused(built_bakery: Order, run: Run) -> None:
    answer = run("verify", "http://farm.example/", "--into", built_bakery.into)
    assert answer.status == 1
    assert answer.err == (
        "http://farm.example/: without https no phone keeps the site offline\n    hint: publish it over https\n"
    )
