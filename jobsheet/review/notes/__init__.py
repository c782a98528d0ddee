"""Safety notes, reminders, figures of law: rows of data and when they are true."""
