using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Tallies : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Language",
                table: "Runs",
                type: "TEXT",
                maxLength: 16,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Language",
                table: "PracticeTries",
                type: "TEXT",
                maxLength: 16,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Language",
                table: "Papers",
                type: "TEXT",
                maxLength: 16,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "FirstChances",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Procedure = table.Column<string>(type: "TEXT", nullable: false),
                    Source = table.Column<string>(type: "TEXT", nullable: false),
                    Subjects = table.Column<string>(type: "TEXT", nullable: false),
                    Orders = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FirstChances", x => new { x.PersonId, x.Procedure, x.Source });
                    table.ForeignKey(
                        name: "FK_FirstChances_AspNetUsers_PersonId",
                        column: x => x.PersonId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Tallies",
                columns: table => new
                {
                    Procedure = table.Column<string>(type: "TEXT", nullable: false),
                    Source = table.Column<string>(type: "TEXT", nullable: false),
                    Cut = table.Column<string>(type: "TEXT", nullable: false),
                    Group = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    People = table.Column<string>(type: "TEXT", nullable: false),
                    Wrong = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tallies", x => new { x.Source, x.Cut, x.Procedure, x.Group });
                });

            migrationBuilder.CreateTable(
                name: "TallySubjects",
                columns: table => new
                {
                    Procedure = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Subject = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TallySubjects", x => new { x.Procedure, x.Number });
                });

            migrationBuilder.CreateTable(
                name: "WrongOrders",
                columns: table => new
                {
                    Procedure = table.Column<string>(type: "TEXT", nullable: false),
                    Source = table.Column<string>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    Subjects = table.Column<string>(type: "TEXT", nullable: false),
                    People = table.Column<int>(type: "INTEGER", nullable: false),
                    Cost = table.Column<int>(type: "INTEGER", nullable: false),
                    ExampleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ExampleNumber = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_WrongOrders", x => new { x.Procedure, x.Source, x.Code });
                });

            migrationBuilder.CreateIndex(
                name: "IX_TallySubjects_Procedure_Kind_Subject",
                table: "TallySubjects",
                columns: new[] { "Procedure", "Kind", "Subject" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_WrongOrders_Procedure_Source_People",
                table: "WrongOrders",
                columns: new[] { "Procedure", "Source", "People" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "FirstChances");

            migrationBuilder.DropTable(
                name: "Tallies");

            migrationBuilder.DropTable(
                name: "TallySubjects");

            migrationBuilder.DropTable(
                name: "WrongOrders");

            migrationBuilder.DropColumn(
                name: "Language",
                table: "Runs");

            migrationBuilder.DropColumn(
                name: "Language",
                table: "PracticeTries");

            migrationBuilder.DropColumn(
                name: "Language",
                table: "Papers");
        }
    }
}
