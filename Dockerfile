# Two stages: the first has a compiler for the SQLite binding, the second only what runs.
FROM node:20-bookworm-slim AS build
ENV NODE_ENV=production
RUN apt-get update -qq \
 && apt-get install -y -qq --no-install-recommends python3 make g++ \
 && rm -rf /var/lib/apt/lists/*
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
COPY tools ./tools
RUN npm ci --omit=dev --no-audit --no-fund
COPY . .
# Generates the database clients and records that nothing is left to set up.
RUN node scripts/setup.mjs

FROM node:20-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0 PORT=3000 DATA_DIR=/data
WORKDIR /app
COPY --from=build /app /app
RUN mkdir /data && chown node:node /data
USER node
VOLUME /data
EXPOSE 3000
HEALTHCHECK --interval=30s --timeout=5s --start-period=20s \
  CMD ["node", "-e", "fetch('http://127.0.0.1:' + process.env.PORT + '/healthz').then((r) => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "scripts/start.mjs"]
