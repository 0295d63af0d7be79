import { OrbitControls } from '@react-three/drei';
import { Canvas } from '@react-three/fiber';
import { createRoot } from 'react-dom/client';

// The least that a page with a picture to walk round can be made of; only its size counts.
const place = document.getElementById('root');
if (place === null) throw new Error('the page has no root');
createRoot(place).render(
  <Canvas>
    <ambientLight />
    <mesh>
      <boxGeometry />
      <meshStandardMaterial />
    </mesh>
    <OrbitControls />
  </Canvas>,
);
