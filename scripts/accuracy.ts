import { ACCURACY_TABLES } from "../test/published/accuracyTables.ts";

for (const { title, unit, rows } of ACCURACY_TABLES) {
  const compared = rows();
  const worst = compared.toSorted((a, b) => Math.abs(b.error) - Math.abs(a.error))[0];
  console.log(title);
  if (!worst) {
    console.log("  nothing to compare");
    process.exitCode = 1;
    continue;
  }
  const mean = compared.reduce((sum, row) => sum + row.error, 0) / compared.length;
  const meanSize = compared.reduce((sum, row) => sum + Math.abs(row.error), 0) / compared.length;
  console.log(
    `  ${compared.length} rows, mean ${figure(mean)} ${unit}, mean size ${figure(meanSize)} ${unit}`,
  );
  console.log(`  worst ${figure(worst.error)} ${unit}: ${worst.field}, ${worst.place}`);
}

function figure(value: number): string {
  return Number(value.toPrecision(3)).toString();
}
