"""A core that misbehaves, for tests of the plugin: fake_core.py MODE [COUNTER].

It answers `initialize` and `catalogue` as a core does, and `plan` in the way of its mode. With a counter file it behaves from the second start on.
"""
import json
import os
import sys
import time

mode = sys.argv[1]
if len(sys.argv) > 2:
    if os.path.exists(sys.argv[2]):
        mode = "good"
    open(sys.argv[2], "a").write("started\n")
out = sys.stdout.buffer


def send(text):
    out.write(text if isinstance(text, bytes) else text.encode())
    out.flush()


def result(number, value):
    send(json.dumps({"jsonrpc": "2.0", "id": number, "result": value}) + "\n")


if mode == "dies-at-once":
    sys.exit("no such machine")
if mode == "deaf":
    time.sleep(600)
for line in sys.stdin.buffer:
    request = json.loads(line)
    number, method = request.get("id"), request["method"]
    if method == "initialize":
        result(number, {"contract": "9.0" if mode == "other-contract" else "1.0", "version": "fake", "methods": [], "notifications": [], "limits": {"plans": 1}, "added": {"later": [1]}})
    elif method == "shutdown":
        result(number, {"done": True})
        break
    elif method == "catalogue":
        result(number, {"contract": "1.0", "command": "list", "exitCode": 0, "findings": []})
    elif method == "cancel":
        if mode == "cancels":
            send(json.dumps({"jsonrpc": "2.0", "id": request["params"]["request"], "error": {"code": -32001, "message": "cancelled"}}) + "\n")
    elif mode == "crashes":
        sys.stderr.write("out of wood\n")
        sys.stderr.flush()
        os._exit(3)
    elif mode == "killed":
        os.kill(os.getpid(), 9)
    elif mode == "dies-in-mid-message":
        send('{"jsonrpc":"2.0","id":%d,"result":{"findings":[' % number)
        os._exit(0)
    elif mode == "hangs":
        time.sleep(600)
    elif mode == "babbles":
        while True:
            send('{"jsonrpc":"2.0","method":"progress","params":{"request":"1","stage":"shapes"}}\n')
            time.sleep(0.05)
    elif mode == "rubbish":
        send("Segmentation fault, but kindly\n")
    elif mode == "no-utf8":
        send(b'{"jsonrpc":"2.0","id":%d,"result":{"plan":"\xff"}}\n' % number)
    elif mode == "endless":
        while True:
            send(b"[" * 65536)
    elif mode == "wrong-id":
        result(number + 1, {"findings": [], "programs": []})
    elif mode == "twice":
        result(number, {"findings": [], "programs": []})
        result(number, {"findings": [], "programs": []})
    elif mode == "wrong-form":
        result(number, {"findings": "none", "programs": []})
    elif mode == "neither":
        send(json.dumps({"jsonrpc": "2.0", "id": number}) + "\n")
    elif mode == "no-object":
        send("[1,2,3]\n")
    elif mode == "refuses":
        send(json.dumps({"jsonrpc": "2.0", "id": number, "error": {"code": -32602, "message": "no such thing"}}) + "\n")
    elif mode == "cancels":
        pass
    elif mode == "good":
        for stage in ("reading", "proof"):
            send(json.dumps({"jsonrpc": "2.0", "method": "progress", "params": {"request": str(number), "stage": stage}}) + "\n")
        send(json.dumps({"jsonrpc": "2.0", "method": "news-of-a-later-version"}) + "\n")
        result(number, {"plan": "p1", "findings": [], "programs": []})
