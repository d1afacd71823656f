# Not a later Node 24: an addon compiled for 24.19 to 24.21 may end the process
# (https://github.com/nodejs/node/issues/65446).
# The image: built with everything, run with what the built server needs, as a user that may write nothing but /data.
FROM node:24.18.1-bookworm AS build
WORKDIR /pitlamp
COPY . .
RUN npm run prestart && npm prune --omit=dev

FROM node:24.18.1-bookworm-slim
ENV NODE_ENV=production PITLAMP_DATA=/data
WORKDIR /pitlamp
COPY --from=build /pitlamp/package.json /pitlamp/package-lock.json ./
COPY --from=build /pitlamp/node_modules ./node_modules
COPY --from=build /pitlamp/build ./build
COPY --from=build /pitlamp/seeds ./seeds
RUN install --directory --owner=node --group=node /data
USER node
VOLUME /data
EXPOSE 8080
# Whether it lives. Whether it can serve is asked by the proxy and by docker-compose.yml, at /readyz.
HEALTHCHECK --interval=10s --timeout=3s --start-period=30s \
  CMD ["node", "-e", "fetch('http://127.0.0.1:8080/healthz').then(({ ok }) => process.exit(ok ? 0 : 1), () => process.exit(1))"]
# One thread helps with garbage and with making code fast: a core is left for everybody's clocks.
CMD ["node", "--v8-pool-size=1", "--enable-source-maps", "build/server/main.js"]
