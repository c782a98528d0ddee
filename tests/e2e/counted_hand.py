"""A person before the program: keys at a pace, the mouse where a screen reader
would find things; both are counted.
"""

import subprocess
import time


def words_of(path):
    """What a sheet says, read back by another program than ours."""
    done = subprocess.run(
        ["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True
    )
    return done.stdout


class CountedHand:
    """Presses keys and the mouse; waits only for what can be seen or is kept."""

    def __init__(self, running, pace=15):
        self.running = running
        #: Between two keys [ms].
        self.pace = pace
        self.pressed = 0
        self.clicks = 0
        self.questions = 0
        self.begun = time.monotonic()

    @property
    def seconds(self):
        return time.monotonic() - self.begun

    # --- keys ---

    def keys(self, *names):
        self.pressed += len(names)
        self.running.xdotool("key", "--delay", str(self.pace), "--clearmodifiers", *names)

    def tabs(self, count):
        self.keys(*["Tab"] * count)

    def type(self, text):
        self.pressed += len(text)
        self.running.xdotool("type", "--delay", str(self.pace), text)

    def fill(self, *texts):
        """Fields one after the other; None leaves one as it is."""
        for text in texts:
            if text is not None:
                self.type(text)
            self.keys("Tab")

    # --- the mouse ---

    def click(self, name, role="", nth=0):
        self.clicks += 1
        self.running.click(name, role, nth)

    def write_in(self, name, text, role="EditableText", nth=0):
        """Press a box three times, which chooses its line, and type over it."""
        self.clicks += 3
        self.running.click(name, role, nth, times=3)
        self.type(text)

    # --- files ---

    def save_as(self, path, title):
        """As a file of one's own, by the keyboard; `title` is that of the window afterwards."""
        self._into_file("ctrl+s", "Save the job", path)
        self.running.take_keys(title)

    def export(self, path, title):
        """The sheets, by the keyboard; their words."""
        self._into_file("ctrl+e", "Export the sheets", path)
        self.running.take_keys(title)
        return words_of(path)

    def _into_file(self, key, question, path):
        self.keys(key)
        self.asked(question)
        self.keys("ctrl+a")
        self.type(str(path))
        self.keys("Return")
        self.running.until(path.exists)

    # --- waiting ---

    def asked(self, name):
        """A box or a window of its own is there and has the keyboard."""
        self.questions += 1
        self.running.take_keys(name)

    def steps(self):
        return sum(text.count("kind:") for text in self.running.journal())

    def insert(self, words):
        """A step of the kind that these words find, after the chosen one."""
        before = self.steps()
        self.keys("Insert")
        self.type(words)
        self.keys("Return")
        self.running.until(lambda: self.steps() > before)

    def told(self):
        return f"{self.pressed} keys, {self.clicks} clicks, {self.questions} questions, {self.seconds:.0f} s"
