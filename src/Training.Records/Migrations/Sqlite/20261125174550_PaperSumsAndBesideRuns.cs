using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class PaperSumsAndBesideRuns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "BesideRuns",
                columns: table => new
                {
                    RunId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ExaminerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    BegunAt = table.Column<long>(type: "INTEGER", nullable: false),
                    EndedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BesideRuns", x => new { x.RunId, x.ExaminerId });
                    table.ForeignKey(
                        name: "FK_BesideRuns_AspNetUsers_ExaminerId",
                        column: x => x.ExaminerId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_BesideRuns_Runs_RunId",
                        column: x => x.RunId,
                        principalTable: "Runs",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ItemSums",
                columns: table => new
                {
                    CompetencyHash = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Scenario = table.Column<string>(type: "TEXT", nullable: false),
                    Asked = table.Column<int>(type: "INTEGER", nullable: false),
                    Right = table.Column<int>(type: "INTEGER", nullable: false),
                    Rest = table.Column<long>(type: "INTEGER", nullable: false),
                    RestSquares = table.Column<long>(type: "INTEGER", nullable: false),
                    RestWhereRight = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ItemSums", x => new { x.CompetencyHash, x.Kind, x.Scenario });
                });

            migrationBuilder.CreateTable(
                name: "PaperSums",
                columns: table => new
                {
                    CompetencyHash = table.Column<string>(type: "TEXT", nullable: false),
                    Competency = table.Column<string>(type: "TEXT", nullable: false),
                    Papers = table.Column<int>(type: "INTEGER", nullable: false),
                    Passed = table.Column<int>(type: "INTEGER", nullable: false),
                    Total = table.Column<long>(type: "INTEGER", nullable: false),
                    TotalSquares = table.Column<long>(type: "INTEGER", nullable: false),
                    RightAtPlace = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PaperSums", x => x.CompetencyHash);
                });

            migrationBuilder.CreateTable(
                name: "BesideTaps",
                columns: table => new
                {
                    RunId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ExaminerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Step = table.Column<string>(type: "TEXT", nullable: false),
                    Seconds = table.Column<decimal>(type: "TEXT", nullable: false),
                    UndoneAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BesideTaps", x => new { x.RunId, x.ExaminerId, x.Number });
                    table.ForeignKey(
                        name: "FK_BesideTaps_BesideRuns_RunId_ExaminerId",
                        columns: x => new { x.RunId, x.ExaminerId },
                        principalTable: "BesideRuns",
                        principalColumns: new[] { "RunId", "ExaminerId" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_BesideRuns_ExaminerId",
                table: "BesideRuns",
                column: "ExaminerId");

            migrationBuilder.CreateIndex(
                name: "IX_BesideTaps_RunId_ExaminerId_Id",
                table: "BesideTaps",
                columns: new[] { "RunId", "ExaminerId", "Id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PaperSums_Competency",
                table: "PaperSums",
                column: "Competency");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "BesideTaps");

            migrationBuilder.DropTable(
                name: "ItemSums");

            migrationBuilder.DropTable(
                name: "PaperSums");

            migrationBuilder.DropTable(
                name: "BesideRuns");
        }
    }
}
