using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class ShopNeeds : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<string>(
                name: "ProcedureHash",
                table: "PracticeTries",
                type: "TEXT",
                nullable: false,
                defaultValue: "",
                oldClrType: typeof(string),
                oldType: "TEXT",
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "ProcedureHash",
                table: "PaperQuestions",
                type: "TEXT",
                nullable: false,
                defaultValue: "",
                oldClrType: typeof(string),
                oldType: "TEXT",
                oldNullable: true);

            migrationBuilder.AlterColumn<string>(
                name: "Procedure",
                table: "PaperQuestions",
                type: "TEXT",
                nullable: false,
                defaultValue: "",
                oldClrType: typeof(string),
                oldType: "TEXT",
                oldNullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Offered",
                table: "PaperQuestions",
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "StartJson",
                table: "PaperQuestions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "ShopNeeds",
                columns: table => new
                {
                    ShopId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Competency = table.Column<string>(type: "TEXT", nullable: false),
                    People = table.Column<int>(type: "INTEGER", nullable: false),
                    SetById = table.Column<Guid>(type: "TEXT", nullable: false),
                    SetAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShopNeeds", x => new { x.ShopId, x.Competency });
                    table.ForeignKey(
                        name: "FK_ShopNeeds_AspNetUsers_SetById",
                        column: x => x.SetById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShopNeeds_Shops_ShopId",
                        column: x => x.ShopId,
                        principalTable: "Shops",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ShopNeeds_SetById",
                table: "ShopNeeds",
                column: "SetById");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ShopNeeds");

            migrationBuilder.DropColumn(
                name: "Offered",
                table: "PaperQuestions");

            migrationBuilder.DropColumn(
                name: "StartJson",
                table: "PaperQuestions");

            migrationBuilder.AlterColumn<string>(
                name: "ProcedureHash",
                table: "PracticeTries",
                type: "TEXT",
                nullable: true,
                oldClrType: typeof(string),
                oldType: "TEXT");

            migrationBuilder.AlterColumn<string>(
                name: "ProcedureHash",
                table: "PaperQuestions",
                type: "TEXT",
                nullable: true,
                oldClrType: typeof(string),
                oldType: "TEXT");

            migrationBuilder.AlterColumn<string>(
                name: "Procedure",
                table: "PaperQuestions",
                type: "TEXT",
                nullable: true,
                oldClrType: typeof(string),
                oldType: "TEXT");
        }
    }
}
