from typing import ClassVar

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.contrib.auth.models import PermissionsMixin
from django.db import models
from django.db.models.functions import Lower


class UserManager(BaseUserManager["User"]):
    def create_user(self, email: str, name: str, password: str | None = None) -> "User":
        """A new person; without a password they cannot sign in until they have set one."""
        user = self.model(email=email.strip().lower(), name=name)
        user.set_password(password)
        user.full_clean()
        user.save(using=self._db)
        return user


class User(AbstractBaseUser, PermissionsMixin):
    """A person who signs in with an e-mail address. What they may do hangs on their memberships."""

    email = models.EmailField("e-mail", unique=True)
    name = models.CharField(max_length=120)
    is_active = models.BooleanField(default=True)
    is_staff = models.BooleanField(default=False)
    date_joined = models.DateTimeField(auto_now_add=True)

    objects: ClassVar[UserManager] = UserManager()

    USERNAME_FIELD = "email"
    EMAIL_FIELD = "email"
    REQUIRED_FIELDS = ["name"]

    class Meta:
        constraints = [
            models.UniqueConstraint(Lower("email"), name="one_user_per_email"),
        ]

    def __str__(self) -> str:
        return self.name or self.email

    def get_full_name(self) -> str:
        return self.name
