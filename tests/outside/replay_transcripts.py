"""Replays conversations with the service: a client in another language, with nothing but the base library.

Read is one JSON object: the command that starts the service and the files of the transcripts. Each line of those is {"send": text} or {"get": message}. Printed is "as before", or what is
no longer answered. Properties may be added; words for people and figures of a plan may change, as long as they are there.
"""
import json
import subprocess
import sys

FREE = {
    "message", "advice", "version", "name", "says", "asks", "text", "sha256", "minutes", "cuttingLength", "proof", "feed", "speed", "passName", "at", "fromZ", "toZ", "way",
    "total", "next", "entities", "found", "allowed",
}


def lacks(kept, got, at):
    if isinstance(kept, dict) and isinstance(got, dict):
        for key, value in kept.items():
            if key not in got:
                return f"{at}.{key}"
            if key not in FREE and (found := lacks(value, got[key], f"{at}.{key}")):
                return found
        return ""
    if isinstance(kept, list) and isinstance(got, list):
        if len(kept) > len(got):
            return at
        for i, value in enumerate(kept):
            if found := lacks(value, got[i], f"{at}[{i}]"):
                return found
        return ""
    return "" if kept == got else at


asked = json.load(sys.stdin)
for path in asked["transcripts"]:
    with open(path, encoding="utf-8") as file:
        lines = [json.loads(line) for line in file]
    sent = "".join(line["send"] + "\n" for line in lines if "send" in line)
    served = subprocess.run(asked["command"], input=sent.encode("utf-8"), capture_output=True, timeout=120)
    got = [json.loads(line) for line in served.stdout.decode("utf-8").splitlines()]
    kept = [line["get"] for line in lines if "get" in line]
    if served.returncode != 0 or served.stderr or len(got) != len(kept):
        print(f"{path}: ended with {served.returncode}, {len(got)} messages instead of {len(kept)}: {served.stderr.decode('utf-8', 'replace')}")
        sys.exit(0)
    for i, message in enumerate(kept):
        if found := lacks(message, got[i], f"{path} message {i + 1}: $"):
            print(found)
            sys.exit(0)
print("as before")
