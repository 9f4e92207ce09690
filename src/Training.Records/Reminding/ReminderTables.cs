using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using Training.Records.Accounts;

namespace Training.Records.Reminding;

/// <summary>The calendar address of an owner. Only a hash of its secret is kept: who reads the database cannot read the calendar by it.</summary>
internal sealed class CalendarAddress
{
    public required PersonId PersonId { get; init; }

    /// <summary>The SHA-256 of the secret, which has 256 random bits and so needs no salt.</summary>
    public required byte[] SecretHash { get; set; }

    public required Instant MadeAt { get; set; }
}

/// <summary>A weekly mail, kept before it is sent, so that one that has to be sent again bears the same name.</summary>
internal sealed class ReminderMail
{
    public required PersonId PersonId { get; init; }

    /// <summary>The Monday of the week.</summary>
    public required LocalDate Week { get; init; }

    public required string MessageId { get; init; }

    public required Instant BegunAt { get; init; }

    /// <summary>When the mail server took it; null while it has not, or while nobody knows whether it has.</summary>
    public Instant? SentAt { get; set; }
}

internal sealed class ReminderTables : IEntityTypeConfiguration<CalendarAddress>, IEntityTypeConfiguration<ReminderMail>
{
    public void Configure(EntityTypeBuilder<CalendarAddress> builder)
    {
        builder.ToTable("CalendarAddresses");
        builder.HasKey(address => address.PersonId);
        builder.HasIndex(address => address.SecretHash).IsUnique();
        builder.HasOne<Person>().WithOne().HasForeignKey<CalendarAddress>(address => address.PersonId);
    }

    public void Configure(EntityTypeBuilder<ReminderMail> builder)
    {
        builder.ToTable("ReminderMails");
        builder.HasKey(mail => new { mail.PersonId, mail.Week });
        builder.Property(mail => mail.MessageId).HasMaxLength(100);
        builder.HasIndex(mail => mail.MessageId).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(mail => mail.PersonId);
    }
}
