"""A proxy on this computer that loses, doubles, delays and mixes up what phones send, and answers 500 to some."""

import http.client
import http.server
import random
import threading
import time
from collections import Counter


class Faulty:
    """Stands before a server. While `calm` it passes everything on. seen: how often each fault was done."""

    def __init__(self, port, seed):
        self.port, self.dice, self.calm = port, random.Random(seed), True
        self.seen, self.lock, self.held = Counter(), threading.Lock(), []
        proxy = self

        class Handler(http.server.BaseHTTPRequestHandler):
            protocol_version = "HTTP/1.1"

            def log_message(self, *_):
                pass

            def do_GET(self):
                self.pass_on()

            def do_POST(self):
                self.pass_on()

            def pass_on(self):
                body = self.rfile.read(int(self.headers.get("Content-Length", 0)))
                asked = (self.command, self.path, body, dict(self.headers))
                proxy.handle(self, asked)

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
        self.server.daemon_threads = True
        self.thread = threading.Thread(target=self.server.serve_forever, daemon=True)
        self.thread.start()

    @property
    def home(self):
        """Its address."""
        return f"http://127.0.0.1:{self.server.server_port}"

    def handle(self, handler, asked):
        """Pass a request on, or do it some harm."""
        with self.lock:
            fault = "none" if self.calm else self.dice.choices(
                ["none", "lost", "answer lost", "500", "doubled", "delayed", "mixed up"], [4, 2, 2, 2, 1, 1, 1]
            )[0]  # fmt: skip
            self.seen[fault] += 1
        if fault == "lost":
            handler.close_connection = True
            return
        if fault == "500":
            self.answer(handler, 500, {}, b"")
            return
        if fault == "delayed":
            time.sleep(0.2)
        if fault == "mixed up":  # it arrives later, after others; the phone hears nothing
            with self.lock:
                self.held.append(asked)
            handler.close_connection = True
            return
        status, headers, raw = self.ask(asked)
        if fault == "doubled":
            self.ask(asked)
        with self.lock:
            late, self.held = self.held, []
        for one in late:
            self.ask(one)
        if fault == "answer lost":
            handler.close_connection = True
            return
        self.answer(handler, status, headers, raw)

    def ask(self, asked):
        """Ask the server itself."""
        method, path, body, headers = asked
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            kept = {k: v for k, v in headers.items() if k.lower() not in ("connection", "host", "content-length")}
            connection.request(method, path, body or None, kept)
            answer = connection.getresponse()
            return answer.status, dict(answer.getheaders()), answer.read()
        finally:
            connection.close()

    @staticmethod
    def answer(handler, status, headers, raw):
        """Send an answer on."""
        try:
            handler.send_response(status)
            for name, value in headers.items():
                if name.lower() in ("content-type", "cache-control", "content-security-policy"):
                    handler.send_header(name, value)
            handler.send_header("Content-Length", str(len(raw)))
            handler.end_headers()
            handler.wfile.write(raw)
        except OSError:
            handler.close_connection = True

    def close(self):
        """Stop."""
        self.server.shutdown()
        self.server.server_close()
        self.thread.join()
