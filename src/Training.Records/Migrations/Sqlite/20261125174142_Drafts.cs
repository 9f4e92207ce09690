using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Drafts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "DeskEntries",
                columns: table => new
                {
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Act = table.Column<string>(type: "TEXT", nullable: false),
                    Path = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: true),
                    PublicationNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    WrittenById = table.Column<Guid>(type: "TEXT", nullable: false),
                    ApprovedById = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DeskEntries", x => x.Number);
                    table.ForeignKey(
                        name: "FK_DeskEntries_AspNetUsers_ApprovedById",
                        column: x => x.ApprovedById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_DeskEntries_AspNetUsers_WrittenById",
                        column: x => x.WrittenById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_DeskEntries_Publications_PublicationNumber",
                        column: x => x.PublicationNumber,
                        principalTable: "Publications",
                        principalColumn: "Number",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Drafts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Path = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    BasedOn = table.Column<string>(type: "TEXT", nullable: true),
                    State = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    ChangedById = table.Column<Guid>(type: "TEXT", nullable: false),
                    ChangedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    OfferedById = table.Column<Guid>(type: "TEXT", nullable: true),
                    OfferedAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Drafts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Drafts_AspNetUsers_ChangedById",
                        column: x => x.ChangedById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Drafts_AspNetUsers_OfferedById",
                        column: x => x.OfferedById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "LaidOver",
                columns: table => new
                {
                    Path = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    Over = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LaidOver", x => x.Path);
                    table.ForeignKey(
                        name: "FK_LaidOver_PublishedTexts_Text",
                        column: x => x.Text,
                        principalTable: "PublishedTexts",
                        principalColumn: "Hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "DraftTexts",
                columns: table => new
                {
                    DraftId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    WrittenOn = table.Column<int>(type: "INTEGER", nullable: false),
                    IsBeside = table.Column<bool>(type: "INTEGER", nullable: false),
                    IsSettled = table.Column<bool>(type: "INTEGER", nullable: false),
                    ById = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Text = table.Column<byte[]>(type: "BLOB", maxLength: 1048576, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DraftTexts", x => new { x.DraftId, x.Number });
                    table.ForeignKey(
                        name: "FK_DraftTexts_AspNetUsers_ById",
                        column: x => x.ById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_DraftTexts_Drafts_DraftId",
                        column: x => x.DraftId,
                        principalTable: "Drafts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_DeskEntries_ApprovedById",
                table: "DeskEntries",
                column: "ApprovedById");

            migrationBuilder.CreateIndex(
                name: "IX_DeskEntries_PublicationNumber",
                table: "DeskEntries",
                column: "PublicationNumber");

            migrationBuilder.CreateIndex(
                name: "IX_DeskEntries_WrittenById",
                table: "DeskEntries",
                column: "WrittenById");

            migrationBuilder.CreateIndex(
                name: "IX_Drafts_ChangedById",
                table: "Drafts",
                column: "ChangedById");

            migrationBuilder.CreateIndex(
                name: "IX_Drafts_OfferedById",
                table: "Drafts",
                column: "OfferedById");

            migrationBuilder.CreateIndex(
                name: "IX_Drafts_State_Path",
                table: "Drafts",
                columns: new[] { "State", "Path" });

            migrationBuilder.CreateIndex(
                name: "IX_DraftTexts_ById",
                table: "DraftTexts",
                column: "ById");

            migrationBuilder.CreateIndex(
                name: "IX_LaidOver_Text",
                table: "LaidOver",
                column: "Text");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "DeskEntries");

            migrationBuilder.DropTable(
                name: "DraftTexts");

            migrationBuilder.DropTable(
                name: "LaidOver");

            migrationBuilder.DropTable(
                name: "Drafts");
        }
    }
}
