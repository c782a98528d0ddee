"""What stands in the row of a step: begin reading at `step_rows.py`."""
