"""What the shelf shows of its jobs, worked in idle time. Begin with `worked_out.py`."""
