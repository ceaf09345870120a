"""Why a backup or a restore was refused or failed; the message says what to mend."""

from trimops.kernel.errors import RuleBroken


class BackupProblem(RuleBroken):
    """Something stands in the way; nothing that was there before has been harmed."""

    code = "backup_problem"


class WrongKey(BackupProblem):
    """The file is sealed, and the key that was given (or none) does not open it."""

    code = "backup_wrong_key"


class FaultyBackup(BackupProblem):
    """The file is not what was written: cut short, altered, or it does not restore to what it says."""

    code = "backup_faulty"


class NotVerified(BackupProblem):
    """The file was written, but whether it restores could not be tried."""

    code = "backup_not_verified"


class NotEmpty(BackupProblem):
    """A restore goes into an empty place only."""

    code = "restore_not_empty"


class OlderProgram(BackupProblem):
    """The backup was made by a newer trimops than this one."""

    code = "restore_older_program"
