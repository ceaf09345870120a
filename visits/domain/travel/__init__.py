"""How long a drive takes and how far it is: by estimate, or by road with a van and a trailer."""
