"""The invented farm, served for a trial."""

import os
import socket
import subprocess
import time


def serving(program):
    """The demo on a port of its own."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [program, "serve", "--demo", "--listen", f"127.0.0.1:{port}"]
    server = subprocess.Popen(command, stdout=subprocess.DEVNULL, env=os.environ | {"TZ": "UTC"})
    for _ in range(200):
        with socket.socket() as asked:
            if asked.connect_ex(("127.0.0.1", port)) == 0:
                return server, f"http://127.0.0.1:{port}"
        time.sleep(0.05)
    raise SystemExit("the demo does not answer")
