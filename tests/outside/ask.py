"""Answers many questions in one process: the libraries are loaded once, and each question runs its script in a fork of its own, so that none sees what another did.

A line in is {"script": path, "modules": [names], "bytes": length}, and as many bytes of text for the script follow; a line out is {"exit": code, "output": text, "error": text}, or {"missing": module}.
"""
import importlib
import json
import os
import runpy
import sys
import tempfile


def answer(script, given):
    with tempfile.TemporaryFile("w+b") as asked, tempfile.TemporaryFile("w+b") as output, tempfile.TemporaryFile("w+b") as error:
        asked.write(given)
        asked.seek(0)
        child = os.fork()
        if child == 0:
            code = 1
            try:
                for file, at in ((asked, 0), (output, 1), (error, 2)):
                    os.dup2(file.fileno(), at)
                sys.stdin, sys.stdout, sys.stderr = (open(at, mode, encoding="utf-8", closefd=False) for at, mode in ((0, "r"), (1, "w"), (2, "w")))
                sys.argv = [script]
                sys.path[0] = os.path.dirname(script)
                try:
                    runpy.run_path(script, run_name="__main__")
                    code = 0
                except SystemExit as e:
                    code = e.code if isinstance(e.code, int) else 0 if e.code is None else 1
                    if isinstance(e.code, str):
                        sys.stderr.write(e.code)
                except BaseException:
                    import traceback
                    traceback.print_exc()
                sys.stdout.flush()
                sys.stderr.flush()
            finally:
                os._exit(code)
        _, status = os.waitpid(child, 0)
        output.seek(0)
        error.seek(0)
        return {"exit": os.waitstatus_to_exitcode(status), "output": output.read().decode("utf-8"), "error": error.read().decode("utf-8")}


def main():
    while line := sys.stdin.buffer.readline():
        question = json.loads(line)
        given = sys.stdin.buffer.read(question["bytes"])
        said = None
        for module in question["modules"]:
            try:
                importlib.import_module(module)
            except ImportError:
                said = {"missing": module}
                break
        print(json.dumps(said or answer(question["script"], given)), flush=True)


main()
