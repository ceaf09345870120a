"""Road maps: engines that say how long a car takes. The one place that speaks HTTP to them; knows no framework."""
