-- CreateIndex
CREATE INDEX "Run_levelId_layoutOk_ordinal_idx" ON "Run"("levelId", "layoutOk", "ordinal");
