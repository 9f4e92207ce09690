using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class DeskLog : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<byte[]>(
                name: "ApproverSalt",
                table: "DeskEntries",
                type: "BLOB",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LogIndex",
                table: "DeskEntries",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<byte[]>(
                name: "WriterSalt",
                table: "DeskEntries",
                type: "BLOB",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "ApproverSalt",
                table: "DeskEntries");

            migrationBuilder.DropColumn(
                name: "LogIndex",
                table: "DeskEntries");

            migrationBuilder.DropColumn(
                name: "WriterSalt",
                table: "DeskEntries");
        }
    }
}
