using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Training.Records.Accounts;

internal sealed class AccountTables : IEntityTypeConfiguration<Shop>, IEntityTypeConfiguration<Person>, IEntityTypeConfiguration<Role>
{
    public void Configure(EntityTypeBuilder<Shop> builder)
    {
        builder.HasKey(shop => shop.Id);
        builder.HasIndex(shop => shop.Name).IsUnique();
    }

    public void Configure(EntityTypeBuilder<Person> builder)
    {
        builder.Property(person => person.Id).ValueGeneratedNever();
        builder.HasOne<Shop>().WithMany().HasForeignKey(person => person.ShopId);
    }

    public void Configure(EntityTypeBuilder<Role> builder)
    {
        builder.Property(role => role.Id).ValueGeneratedNever();
        builder.HasData(Roles.All.Select((name, index) => new Role
        {
            // Fixed, so that every database has the same five.
            Id = PersonId.Of(Guid.Parse($"00000000-0000-7000-8000-00000000000{index + 1}")),
            Name = name,
            NormalizedName = name.ToUpperInvariant(),
            ConcurrencyStamp = name,
        }));
    }
}
