-- CreateTable
CREATE TABLE "BidSnapshot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "document" BLOB NOT NULL,
    "figures" JSONB NOT NULL,
    "hash" TEXT NOT NULL,
    CONSTRAINT "BidSnapshot_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "BidSnapshot_projectId_madeAt_idx" ON "BidSnapshot"("projectId", "madeAt");
