-- CreateTable
CREATE TABLE "ShelvedLabourBook" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "version" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "document" JSONB NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL
);

-- CreateIndex
CREATE INDEX "ShelvedLabourBook_madeAt_idx" ON "ShelvedLabourBook"("madeAt");

-- CreateIndex
CREATE UNIQUE INDEX "ShelvedLabourBook_name_version_key" ON "ShelvedLabourBook"("name", "version");
